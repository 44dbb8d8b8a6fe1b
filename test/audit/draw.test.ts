import { createHash } from 'node:crypto'
import { describe, expect, test } from 'vitest'
import { drawByNumber } from '@/lib/server/views/audit-draw'

/** The draw as the page words it, written apart from the code. */
function drawnByHand(seed: string, size: number, count: number): number[] {
  const drawn: number[] = []
  for (let counter = 0; drawn.length < Math.min(size, count); counter += 1) {
    const digest = createHash('sha256').update(`${seed}\n${counter}`, 'utf8').digest()
    const value = digest.readBigUInt64BE(0)
    const multiples = 2n ** 64n / BigInt(size)
    if (value >= multiples * BigInt(size)) continue
    const number = Number(value % BigInt(size))
    if (!drawn.includes(number)) drawn.push(number)
  }
  return drawn
}

describe('a draw by a seed', () => {
  test.each([
    ['3f9ac2', 1000, 10],
    ['dice 4 2 6 6 1', 17, 17],
    ['ü', 2, 1],
    ['0', 312, 100],
  ])('seed %s over %i readings is what the worded rule gives', (seed, size, count) => {
    const drawn = drawByNumber(seed, size, count)
    expect(drawn).toEqual(drawnByHand(seed, size, count))
    expect(drawByNumber(seed, size, count)).toEqual(drawn)
    expect(new Set(drawn).size).toBe(Math.min(size, count))
    expect(drawn.every((one) => one >= 0 && one < size)).toBe(true)
  })

  test('the first number of a seed can be had from a command line', () => {
    const head = createHash('sha256').update('underwrap\n0').digest('hex').slice(0, 16)
    expect(drawByNumber('underwrap', 997, 1)).toEqual([Number(BigInt(`0x${head}`) % 997n)])
  })

  test('more than there are gives all of them, and nothing gives nothing', () => {
    expect(drawByNumber('s', 5, 50).toSorted((a, b) => a - b)).toEqual([0, 1, 2, 3, 4])
    expect(drawByNumber('s', 0, 3)).toEqual([])
    expect(drawByNumber('s', 4, 0)).toEqual([])
    expect(() => drawByNumber('s', 1.5, 1)).toThrow(RangeError)
    expect(() => drawByNumber('s', 3, -1)).toThrow(RangeError)
  })

  test('a longer draw begins with the shorter one of the same seed', () => {
    expect(drawByNumber('a seed', 400, 60).slice(0, 12)).toEqual(drawByNumber('a seed', 400, 12))
  })

  test('no reading is favoured: counts over many seeds stay within chance', () => {
    const [size, seeds, each] = [40, 4000, 5]
    const counts = new Array<number>(size).fill(0)
    for (let seed = 0; seed < seeds; seed += 1)
      for (const one of drawByNumber(`seed ${seed}`, size, each)) counts[one] = (counts[one] ?? 0) + 1
    const expected = (seeds * each) / size
    const chiSquare = counts.reduce((sum, one) => sum + (one - expected) ** 2 / expected, 0)
    // 39 degrees of freedom: 72 is passed once in a thousand by chance alone; drawing without repeats spreads less. The seeds are fixed.
    expect(chiSquare).toBeLessThan(72)
    expect(chiSquare).toBeGreaterThan(10)
  })
})
