import { describe, expect, test } from 'vitest'
import { countdownOf, shakeBetween, showLeft } from '@/lib/capture/countdown'

const START = Date.parse('2026-05-18T10:12:00+01:00')
const told = (seconds: number) => countdownOf(START, 25, START + seconds * 1000)

describe('the countdown of a mix', () => {
  test.each([
    [0, 1500, 'running', 0],
    [1379.5, 121, 'running', 0.92],
    [1380, 120, 'ending', 0.92],
    [1499.9, 1, 'ending', 1],
    [1500, 0, 'over', 1],
    [1620, -120, 'over', 1],
    [-30, 1530, 'running', 0],
  ] as const)('%d s after mixing %d s are left: %s', (seconds, leftSeconds, stage, share) => {
    const found = told(seconds)
    expect(found).toMatchObject({ leftSeconds, stage })
    expect(found.usedShare).toBeCloseTo(share, 3)
  })

  test('it is the same whether it was looked at all along or once, hours later', () => {
    for (const seconds of [1, 2, 3]) told(seconds)
    expect(told(9000)).toEqual({ leftSeconds: -7500, stage: 'over', usedShare: 1 })
  })

  test.each([
    [122, 121, null],
    [121, 120, 'short'],
    [120, 119, null],
    [61, 60, 'short'],
    [1, 0, 'long'],
    [300, -40, 'long'],
    [0, -1, null],
    [null, 121, null],
    [null, 90, 'short'],
    [null, -5, 'long'],
  ] as const)('from %s to %d s left the device shakes: %s', (before, left, shake) => {
    const found = shakeBetween(before, left)
    expect(found === null ? null : found.length === 3 ? 'long' : 'short').toBe(shake)
  })

  test.each([
    [245, '4:05'],
    [0, '0:00'],
    [-61, '−1:01'],
    [3600, '60:00'],
  ])('%d s read %s', (seconds, text) => {
    expect(showLeft(seconds)).toBe(text)
  })
})
