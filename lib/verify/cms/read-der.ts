/** A DER value: its tag, its content, its own bytes, and the values inside when it is constructed. */
export type Der = { tag: number; content: Uint8Array; bytes: Uint8Array; parts: Der[] }

/** The bytes are not one DER value. */
export class NotDer extends Error {}

const DEPTH_AT_MOST = 30
const VALUES_AT_MOST = 6000
export const TAG = {
  boolean: 0x01,
  integer: 0x02,
  bits: 0x03,
  octets: 0x04,
  none: 0x05,
  oid: 0x06,
  generalizedTime: 0x18,
  utcTime: 0x17,
  sequence: 0x30,
  set: 0x31,
  context0: 0xa0,
  context1: 0xa1,
} as const

/**
 * Read one DER value that fills the bytes. Every length must be in its shortest form and every boolean, integer, identifier and bit string in its only form: writing the
 * value again gives the same bytes. Depth and number of values are bounded.
 * @throws NotDer @source ITU-T X.690 sections 8 and 10
 */
export function readDer(bytes: Uint8Array): Der {
  const count = { values: 0 }
  const { value, end } = valueAt(bytes, 0, 0, count)
  if (end !== bytes.length) throw new NotDer('bytes behind the value')
  return value
}

function valueAt(bytes: Uint8Array, at: number, depth: number, count: { values: number }): { value: Der; end: number } {
  count.values += 1
  if (depth > DEPTH_AT_MOST || count.values > VALUES_AT_MOST) throw new NotDer('nested too deep or too many values')
  const tag = bytes[at]
  const first = bytes[at + 1]
  if (tag === undefined || first === undefined || (tag & 0x1f) === 0x1f) throw new NotDer('no tag of this format')
  const { length, from } = lengthAt(bytes, at + 1, first)
  const end = from + length
  if (end > bytes.length) throw new NotDer('a length beyond the end')
  const content = bytes.subarray(from, end)
  const parts: Der[] = []
  if ((tag & 0x20) !== 0) {
    for (let next = 0; next < content.length; ) {
      const inner = valueAt(content, next, depth + 1, count)
      parts.push(inner.value)
      next = inner.end
    }
  } else if (!isOnlyForm(tag, content)) throw new NotDer('a value in another form than the only one')
  return { value: { tag, content, bytes: bytes.subarray(at, end), parts }, end }
}

function lengthAt(bytes: Uint8Array, at: number, first: number): { length: number; from: number } {
  if (first < 0x80) return { length: first, from: at + 1 }
  const lengthBytes = first - 0x80
  if (lengthBytes < 1 || lengthBytes > 4) throw new NotDer('a length in another form')
  let length = 0
  for (let index = 1; index <= lengthBytes; index += 1) length = length * 256 + (bytes[at + index] ?? 0)
  if (length < 0x80 || length < 256 ** (lengthBytes - 1)) throw new NotDer('a length that is not the shortest')
  return { length, from: at + 1 + lengthBytes }
}

function isOnlyForm(tag: number, content: Uint8Array): boolean {
  const [first, second = 0] = content
  switch (tag) {
    case TAG.boolean:
      return content.length === 1 && (first === 0 || first === 0xff)
    case TAG.integer:
      if (first === undefined) return false
      return content.length === 1 || !((first === 0 && second < 0x80) || (first === 0xff && second >= 0x80))
    case TAG.none:
      return content.length === 0
    case TAG.oid:
      return content.length > 0 && (content.at(-1) ?? 0) < 0x80 && isShortOid(content)
    case TAG.bits:
      if (first === undefined || first > 7 || (content.length === 1 && first !== 0)) return false
      return ((content.at(-1) ?? 0) & ((1 << first) - 1)) === 0 || content.length === 1
    default:
      return true
  }
}

/** No part of an identifier begins with an empty digit. */
function isShortOid(content: Uint8Array): boolean {
  return content.every((byte, index) => byte !== 0x80 || (index > 0 && (content[index - 1] ?? 0) >= 0x80))
}

/** Dotted text of an object identifier; empty for a value that is none. */
export function oidOf(value: Der | undefined): string {
  if (value?.tag !== TAG.oid) return ''
  const numbers: number[] = []
  let number = 0
  for (const byte of value.content) {
    number = number * 128 + (byte & 0x7f)
    if (byte < 0x80) {
      numbers.push(number)
      number = 0
    }
  }
  const [first = 0, ...rest] = numbers
  const root = Math.min(2, Math.floor(first / 40))
  return [root, first - root * 40, ...rest].join('.')
}

/** Whether a constructed value holds exactly values of these tags. */
export function hasParts(value: Der | undefined, tag: number, tags: readonly number[]): value is Der {
  return (
    value?.tag === tag && value.parts.length === tags.length && tags.every((one, at) => value.parts[at]?.tag === one)
  )
}

/** Whether values stand in the order in which DER writes a set. */
export function isInOrder(values: readonly Der[]): boolean {
  return values.every((value, index) => {
    const before = values[index - 1]
    return before === undefined || compareBytes(before.bytes, value.bytes) < 0
  })
}

function compareBytes(a: Uint8Array, b: Uint8Array): number {
  for (let at = 0; at < Math.min(a.length, b.length); at += 1) if (a[at] !== b[at]) return (a[at] ?? 0) - (b[at] ?? 0)
  return a.length - b.length
}
