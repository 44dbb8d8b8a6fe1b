import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { hamming, likeness, NEAR_ALIKE_BITS } from '@/lib/photo/likeness'
import { runsAsked } from '../runs'

fc.configureGlobal({ numRuns: runsAsked() })

const hash = fc.bigInt({ min: 0n, max: 2n ** 64n - 1n }).map((bits) => bits.toString(16).padStart(16, '0'))
const withBits = (count: number) => ((1n << BigInt(count)) - 1n).toString(16).padStart(16, '0')
const NONE = withBits(0)

describe('likeness', () => {
  test('counts differing bits', () => {
    expect(hamming('0000000000000000', 'ffffffffffffffff')).toBe(64)
    expect(hamming('8000000000000001', '0000000000000000')).toBe(2)
    fc.assert(fc.property(hash, hash, (a, b) => hamming(a, b) === hamming(b, a) && (hamming(a, b) === 0) === (a === b)))
  })

  test('throws for what is no hash', () => {
    expect(() => hamming('12', NONE)).toThrow(RangeError)
    expect(() => hamming(NONE, `${NONE}0`)).toThrow(RangeError)
  })

  test('is exact for the same bytes only', () => {
    const look = { sha256: 'a', dHash: NONE, pHash: NONE }
    expect(likeness(look, { ...look })).toBe('exact')
    expect(likeness(look, { ...look, sha256: 'b' })).toBe('near')
  })

  test.each([
    ['both at their limit', NEAR_ALIKE_BITS.dHash, NEAR_ALIKE_BITS.pHash, 'near'],
    ['dHash one bit over', NEAR_ALIKE_BITS.dHash + 1, NEAR_ALIKE_BITS.pHash, null],
    ['pHash one bit over', NEAR_ALIKE_BITS.dHash, NEAR_ALIKE_BITS.pHash + 1, null],
  ])('is near up to both limits: %s', (_case, dBits, pBits, expected) => {
    const other = { sha256: 'b', dHash: withBits(dBits), pHash: withBits(pBits) }
    expect(likeness({ sha256: 'a', dHash: NONE, pHash: NONE }, other)).toBe(expected)
  })

  test('takes other limits from the caller', () => {
    const [a, b] = [
      { sha256: 'a', dHash: NONE, pHash: NONE },
      { sha256: 'b', dHash: withBits(3), pHash: NONE },
    ]
    expect(likeness(a, b, { dHash: 2, pHash: 64 })).toBeNull()
    expect(likeness(a, b, { dHash: 3, pHash: 0 })).toBe('near')
  })
})
