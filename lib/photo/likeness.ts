/** What likeness is judged by; every photo taken in has it. */
export type Look = { sha256: string; dHash: string; pHash: string }

/**
 * Most bits of 64 in which two photos of one scene differ. On 13 real scenes: two exposures of one scene differed by 5 and
 * 4 bits, copies with a fortieth cropped from each side by up to 8 and 8, the closest two different scenes by 22 and 20.
 */
export const NEAR_ALIKE_BITS = { dHash: 10, pHash: 16 } as const

/**
 * Count the bits in which two hashes of 16 hex digits differ, 0 to 64.
 * @throws RangeError when either is not 16 hex digits
 */
export function hamming(aHex: string, bHex: string): number {
  let differing = toBits(aHex) ^ toBits(bHex)
  let count = 0
  for (; differing > 0n; differing &= differing - 1n) count += 1
  return count
}

/**
 * How alike two photos are: `exact` when their bytes are the same, `near` when both hashes of their look differ in no
 * more bits than allowed, else null. A person decides what a likeness means.
 * @throws RangeError when a hash is not 16 hex digits
 */
export function likeness(
  a: Look,
  b: Look,
  nearBits: { dHash: number; pHash: number } = NEAR_ALIKE_BITS,
): 'exact' | 'near' | null {
  if (a.sha256 === b.sha256) return 'exact'
  return hamming(a.dHash, b.dHash) <= nearBits.dHash && hamming(a.pHash, b.pHash) <= nearBits.pHash ? 'near' : null
}

function toBits(hex: string): bigint {
  if (!/^[0-9a-f]{16}$/i.test(hex))
    throw new RangeError(`Expected 16 hex digits, received ${JSON.stringify(hex.slice(0, 40))}`)
  return BigInt(`0x${hex}`)
}
