import { describe, expect, test } from 'vitest'
import { marksPicture } from '@/lib/domain/pictures/marks-picture'
import { measured } from '@/lib/domain/reading'

const grid = {
  stations: [
    { name: 'A', fromLeak: measured('-130', 'mm') },
    { name: 'B', fromLeak: measured('0', 'mm') },
    { name: 'C', fromLeak: measured('65', 'mm') },
  ],
  clocks: ['12', '6'],
}
const ORDER = ['A-12', 'B-12', 'C-12', 'A-6', 'B-6', 'C-6']
const circles = (leak: string | null) =>
  marksPicture(grid as never, ORDER, leak).shapes.filter((one) => one.kind === 'circle')

describe('marks before they are read', () => {
  test('each stands at its place with its number in the order of reading, 12 o’clock at both edges', () => {
    const texts = marksPicture(grid as never, ORDER, '6').shapes.flatMap((one) =>
      one.kind === 'text' && one.mark !== undefined ? [[one.mark, one.text]] : [],
    )
    expect(texts).toEqual([
      ['A-12', '1'],
      ['A-12', '1'],
      ['A-6', '4'],
      ['B-12', '2'],
      ['B-12', '2'],
      ['B-6', '5'],
      ['C-12', '3'],
      ['C-12', '3'],
      ['C-6', '6'],
    ])
  })

  test('distances along the pipe are to scale', () => {
    const [a, , , b, , , c] = circles(null).map((one) => one.x)
    if (a === undefined || b === undefined || c === undefined) return expect.unreachable('marks are missing')
    expect((b - a) / (c - b)).toBeCloseTo(130 / 65, 9)
  })

  test('the leak is crossed at its clock position, and nowhere where that is not known', () => {
    const crosses = (leak: string | null) =>
      marksPicture(grid as never, ORDER, leak).shapes.filter((one) => one.kind === 'segments' && one.style === 'frame')
    expect(crosses('6')).toHaveLength(1)
    expect(crosses('12')).toHaveLength(2)
    expect(crosses(null)).toEqual([])
  })
})
