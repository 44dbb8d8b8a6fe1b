import { type Refusal, refuse } from '@/lib/calc/refusal'

/** A value that I-JSON allows: no lone surrogate, no duplicate key, no integer beyond 2^53 - 1. */
export type JsonValue = null | boolean | number | string | readonly JsonValue[] | { readonly [key: string]: JsonValue }

/** Deepest nesting read: hostile text must not exhaust the stack. */
const DEPTH_LIMIT = 500
const NUMBER = /-?(?:0|[1-9]\d*)(\.\d+)?([eE][+-]?\d+)?/y
/** Characters that stand for themselves in a string: all but the quote, the backslash and those below the space. */
const PLAIN = /[ -!#-[\]-\uffff]*/y
const LONE_SURROGATE = /\p{Surrogate}/u
const SPACE = /[ \t\n\r]*/y
const ESCAPES: Readonly<Record<string, string>> = {
  '"': '"',
  '\\': '\\',
  '/': '/',
  b: '\b',
  f: '\f',
  n: '\n',
  r: '\r',
  t: '\t',
}
const WORDS: ReadonlyArray<readonly [word: string, value: null | boolean]> = [
  ['null', null],
  ['true', true],
  ['false', false],
]

/** The text is not JSON at this place: unwinds to {@link parseStrictJson}, which answers `not_json`. */
class NotJson extends Error {}

class Reader {
  /** First breach of I-JSON in text that is JSON by grammar. */
  breach: string | null = null
  private at = 0
  private depth = 0

  constructor(private readonly text: string) {}

  whole(): JsonValue {
    const value = this.value()
    if (this.at < this.text.length) throw new NotJson()
    return value
  }

  private match(pattern: RegExp): RegExpExecArray | null {
    pattern.lastIndex = this.at
    const found = pattern.exec(this.text)
    if (found !== null) this.at = pattern.lastIndex
    return found
  }

  private take(sign: string): boolean {
    if (this.text[this.at] !== sign) return false
    this.at += 1
    return true
  }

  private expect(sign: string): void {
    if (!this.take(sign)) throw new NotJson()
  }

  private found(code: string): void {
    this.breach ??= code
  }

  private value(): JsonValue {
    this.match(SPACE)
    const value = this.bare()
    this.match(SPACE)
    return value
  }

  private bare(): JsonValue {
    const sign = this.text[this.at]
    if (sign === '{') return this.nested(() => this.object())
    if (sign === '[') return this.nested(() => this.array())
    if (sign === '"') return this.string()
    for (const [word, value] of WORDS) {
      if (this.text.startsWith(word, this.at)) {
        this.at += word.length
        return value
      }
    }
    return this.number()
  }

  private nested<T>(read: () => T): T {
    this.depth += 1
    if (this.depth > DEPTH_LIMIT) throw new NotJson()
    this.at += 1
    const value = read()
    this.depth -= 1
    return value
  }

  private object(): JsonValue {
    // No prototype: "__proto__" is a key like any other.
    const object: Record<string, JsonValue> = Object.create(null)
    this.match(SPACE)
    if (this.take('}')) return object
    do {
      this.match(SPACE)
      const key = this.string()
      this.match(SPACE)
      this.expect(':')
      const value = this.value()
      if (Object.hasOwn(object, key)) this.found('duplicate_key')
      object[key] = value
    } while (this.take(','))
    this.expect('}')
    return object
  }

  private array(): JsonValue {
    const list: JsonValue[] = []
    this.match(SPACE)
    if (this.take(']')) return list
    do list.push(this.value())
    while (this.take(','))
    this.expect(']')
    return list
  }

  private string(): string {
    this.expect('"')
    let value = ''
    for (;;) {
      const start = this.at
      this.match(PLAIN)
      value += this.text.slice(start, this.at)
      if (this.take('"')) break
      this.expect('\\')
      value += this.escape()
    }
    if (LONE_SURROGATE.test(value)) this.found('lone_surrogate')
    return value
  }

  private escape(): string {
    const sign = this.text[this.at] ?? ''
    this.at += 1
    const short = Object.hasOwn(ESCAPES, sign) ? ESCAPES[sign] : undefined
    if (short !== undefined) return short
    const digits = this.text.slice(this.at, this.at + 4)
    if (sign !== 'u' || !/^[0-9a-fA-F]{4}$/.test(digits)) throw new NotJson()
    this.at += 4
    return String.fromCharCode(Number.parseInt(digits, 16))
  }

  private number(): number {
    const found = this.match(NUMBER)
    if (found === null) throw new NotJson()
    const value = Number(found[0])
    if (!Number.isFinite(value)) throw new NotJson()
    const isInteger = found[1] === undefined && found[2] === undefined
    if (isInteger && !Number.isSafeInteger(value)) this.found('integer_too_large')
    return value
  }
}

/**
 * Parse JSON text strictly. Refuses `not_json` (also NaN, Infinity, a number beyond double range, nesting beyond 500),
 * `duplicate_key`, `lone_surrogate`, and `integer_too_large` for an integer beyond 2^53 - 1, which a plain parser would round.
 * @source RFC 8259, RFC 7493 (I-JSON). Confidence high.
 */
export function parseStrictJson(text: string): { readonly value: JsonValue } | Refusal {
  const reader = new Reader(text)
  try {
    const value = reader.whole()
    return reader.breach === null ? { value } : refuse(reader.breach)
  } catch (error) {
    if (error instanceof NotJson) return refuse('not_json')
    throw error
  }
}
