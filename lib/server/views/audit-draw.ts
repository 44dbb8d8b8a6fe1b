import { digestOf } from '@/lib/evidence/digest'

/** 2^64: what eight bytes of a digest can say. */
const SPAN = 1n << 64n

/**
 * Draw `count` different numbers from 0 to `size` - 1 by a seed, in the order drawn; all of them when there are no more. Anyone can redo it: for c = 0, 1, 2 ... take the
 * first eight bytes of SHA-256 over the UTF-8 text `<seed>\n<c>` as a big-endian number x; x at or above the greatest multiple of `size` that eight bytes
 * hold is passed over, so that no number is favoured; else x mod `size` is drawn unless it was drawn before.
 * @throws RangeError unless both are whole numbers from 0
 */
export function drawByNumber(seed: string, size: number, count: number): number[] {
  for (const one of [size, count])
    if (!Number.isSafeInteger(one) || one < 0) throw new RangeError(`Expected a whole number from 0, received ${one}`)
  const wanted = Math.min(size, count)
  const drawn = new Set<number>()
  const bound = size > 0 ? SPAN - (SPAN % BigInt(size)) : 0n
  for (let counter = 0; drawn.size < wanted; counter += 1) {
    const value = firstEight(digestOf(new TextEncoder().encode(`${seed}\n${counter}`)))
    if (value < bound) drawn.add(Number(value % BigInt(size)))
  }
  return [...drawn]
}

function firstEight(digest: Uint8Array): bigint {
  let value = 0n
  for (const byte of digest.subarray(0, 8)) value = value * 256n + BigInt(byte)
  return value
}
