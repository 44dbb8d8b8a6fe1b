import { keptText, latin1 } from './latin1'

/** A value of a PDF file with its place in the bytes that it was read from. */
export type PdfValue = { at: number; end: number } & (
  | { kind: 'name'; name: string }
  | { kind: 'number'; value: number }
  | { kind: 'text'; bytes: Uint8Array }
  | { kind: 'hex' }
  | { kind: 'ref'; no: number }
  | { kind: 'array'; values: PdfValue[] }
  | { kind: 'dict'; entries: Map<string, PdfValue> }
  | { kind: 'word'; word: 'true' | 'false' | 'null' }
)
export type PdfDict = Extract<PdfValue, { kind: 'dict' }>

/** The bytes are no value as this format writes it. */
export class PdfMalformed extends Error {}

const DEPTH_AT_MOST = 40
const [SPACE, DELIMITER] = [1, 2]
const CLASS = new Uint8Array(256)
for (const byte of [0x00, 0x09, 0x0a, 0x0c, 0x0d, 0x20]) CLASS[byte] = SPACE
for (const sign of '()<>[]{}/%') CLASS[sign.charCodeAt(0)] = DELIMITER
const WORDS = ['true', 'false', 'null'] as const

/** Reads one value after the other. Comments are no part of this format and are refused. */
export class ValueReader {
  constructor(
    readonly bytes: Uint8Array,
    public at = 0,
  ) {}

  /** The value that begins here, after white space. @throws PdfMalformed */
  value(depth = 0): PdfValue {
    if (depth > DEPTH_AT_MOST) throw new PdfMalformed('nested too deep')
    this.skipSpace()
    const byte = this.bytes[this.at]
    switch (byte) {
      case 0x2f:
        return this.name()
      case 0x28:
        return this.text()
      case 0x5b:
        return this.array(depth)
      case 0x3c:
        return this.bytes[this.at + 1] === 0x3c ? this.dict(depth) : this.hex()
      case undefined:
        throw new PdfMalformed('ends within a value')
      default:
        return (byte >= 0x30 && byte <= 0x39) || byte === 0x2b || byte === 0x2d || byte === 0x2e
          ? this.number()
          : this.word()
    }
  }

  /** Whether these characters stand here; they are passed over when they do. */
  take(text: string): boolean {
    for (let offset = 0; offset < text.length; offset += 1)
      if (this.bytes[this.at + offset] !== text.charCodeAt(offset)) return false
    this.at += text.length
    return true
  }

  private skipSpace(): void {
    while (this.at < this.bytes.length && CLASS[this.bytes[this.at] ?? 0] === SPACE) this.at += 1
  }

  private endOfToken(from: number): number {
    let end = from
    while (end < this.bytes.length && CLASS[this.bytes[end] ?? 0] === 0) end += 1
    return end
  }

  private name(): PdfValue {
    const at = this.at
    const end = this.endOfToken(at + 1)
    this.at = end
    const raw = keptText(this.bytes, at + 1, end)
    // another spelling of a name must not hide it
    const name = raw.includes('#')
      ? raw.replace(/#([0-9A-Fa-f]{2})/g, (_, digits: string) => String.fromCharCode(Number.parseInt(digits, 16)))
      : raw
    return { kind: 'name', name, at, end }
  }

  private number(): PdfValue {
    const at = this.at
    const end = this.endOfToken(at)
    const whole = wholeNumber(this.bytes, at, end)
    if (whole !== null) {
      this.at = end
      const refEnd = this.restOfRef()
      return refEnd === null ? { kind: 'number', value: whole, at, end } : { kind: 'ref', no: whole, at, end: refEnd }
    }
    const text = latin1(this.bytes.subarray(at, end))
    if (!/^[+-]?(\d+\.?\d*|\.\d+)$/.test(text) || text.length > 30) throw new PdfMalformed('no number')
    this.at = end
    return { kind: 'number', value: Number(text), at, end }
  }

  /** ` 0 R` behind a number: the end of the reference; passed over when it is there. */
  private restOfRef(): number | null {
    const { bytes, at } = this
    const isRef =
      bytes[at] === 0x20 &&
      bytes[at + 1] === 0x30 &&
      bytes[at + 2] === 0x20 &&
      bytes[at + 3] === 0x52 &&
      CLASS[bytes[at + 4] ?? 0x20] !== 0
    if (!isRef) return null
    this.at = at + 4
    return this.at
  }

  private word(): PdfValue {
    const at = this.at
    const end = this.endOfToken(at)
    const word = WORDS.find((one) => one === latin1(this.bytes.subarray(at, Math.min(end, at + 6))))
    if (!word) throw new PdfMalformed('no value')
    this.at = end
    return { kind: 'word', word, at, end }
  }

  private text(): PdfValue {
    const at = this.at
    let depth = 0
    do {
      const byte = this.bytes[this.at]
      if (byte === undefined) throw new PdfMalformed('a text without end')
      if (byte === 0x5c) this.at += 1
      else if (byte === 0x28) depth += 1
      else if (byte === 0x29) depth -= 1
      this.at += 1
    } while (depth > 0)
    return { kind: 'text', bytes: this.bytes.subarray(at + 1, this.at - 1), at, end: this.at }
  }

  private hex(): PdfValue {
    const at = this.at
    const end = this.bytes.indexOf(0x3e, at) + 1
    if (end === 0) throw new PdfMalformed('a hex text without end')
    this.at = end
    return { kind: 'hex', at, end }
  }

  private array(depth: number): PdfValue {
    const at = this.at
    const values: PdfValue[] = []
    this.at += 1
    for (;;) {
      this.skipSpace()
      if (this.bytes[this.at] === 0x5d) break
      values.push(this.value(depth + 1))
    }
    this.at += 1
    return { kind: 'array', values, at, end: this.at }
  }

  private dict(depth: number): PdfDict {
    const at = this.at
    const entries = new Map<string, PdfValue>()
    this.at += 2
    for (;;) {
      this.skipSpace()
      if (this.take('>>')) break
      if (this.bytes[this.at] !== 0x2f) throw new PdfMalformed('a dictionary without a key')
      const key = this.name()
      if (key.kind !== 'name' || entries.has(key.name)) throw new PdfMalformed('a key twice')
      entries.set(key.name, this.value(depth + 1))
    }
    return { kind: 'dict', entries, at, end: this.at }
  }
}

/** Up to fifteen digits as their number; null when anything else stands there. */
function wholeNumber(bytes: Uint8Array, from: number, to: number): number | null {
  if (to - from > 15) return null
  let number = 0
  for (let at = from; at < to; at += 1) {
    const digit = (bytes[at] ?? 0) - 0x30
    if (digit < 0 || digit > 9) return null
    number = number * 10 + digit
  }
  return number
}
