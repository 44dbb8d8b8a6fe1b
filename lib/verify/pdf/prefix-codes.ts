/** The bytes are no zlib stream, or hold more than was said. */
export class InflateRefused extends Error {}

/** Bits of the longest code. */
export const MOST_BITS = 15

/** Bits that the table of short codes is asked by. */
export const SHORT_BITS = 10

/** Codes by length: how many of each length, and the symbols in order of code; for codes of up to ten bits a table of symbol and length by the bits as they come (length * 512 + symbol, 0 for none). */
export type Codes = { counts: Uint16Array; symbols: Uint16Array; short: Uint16Array }

/** Codes of symbols by the lengths of their codes. @throws InflateRefused when there are more than fit @source RFC 1951 section 3.2.2 */
export function codesOf(lengths: readonly number[]): Codes {
  const counts = new Uint16Array(MOST_BITS + 1)
  for (const length of lengths) counts[length] = (counts[length] ?? 0) + 1
  counts[0] = 0
  let left = 1
  const starts = new Uint16Array(MOST_BITS + 2)
  for (let length = 1; length <= MOST_BITS; length += 1) {
    left = left * 2 - (counts[length] ?? 0)
    if (left < 0) throw new InflateRefused('more codes than fit')
    starts[length + 1] = (starts[length] ?? 0) + (counts[length] ?? 0)
  }
  const symbols = new Uint16Array(lengths.length)
  for (const [symbol, length] of lengths.entries())
    if (length > 0) {
      const start = starts[length] ?? 0
      symbols[start] = symbol
      starts[length] = start + 1
    }
  return { counts, symbols, short: shortCodes(counts, symbols) }
}

function shortCodes(counts: Uint16Array, symbols: Uint16Array): Uint16Array {
  const short = new Uint16Array(1 << SHORT_BITS)
  let [code, index] = [0, 0]
  for (let length = 1; length <= SHORT_BITS; length += 1) {
    for (let count = counts[length] ?? 0; count > 0; count -= 1, code += 1, index += 1)
      for (let bits = reversed(code, length); bits < short.length; bits += 1 << length)
        short[bits] = length * 512 + (symbols[index] ?? 0)
    code <<= 1
  }
  return short
}

/** A code's bits in the order in which they are read. */
function reversed(code: number, length: number): number {
  let bits = 0
  for (let at = 0; at < length; at += 1) bits |= ((code >> at) & 1) << (length - 1 - at)
  return bits
}
