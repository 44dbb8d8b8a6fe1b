import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { compareFractions, fractionOf } from '@/lib/domain/decimal'
import { convertExact } from '@/lib/domain/judge/exact-units'
import { metricBeside, withMetric } from '@/lib/domain/metric-beside'
import { measured, parseReading, showReading, UNITS, type Unit } from '@/lib/domain/reading'
import { showKept } from '@/lib/domain/records/show-value'
import { runsAsked } from '@/test/runs'

describe('metric beside a unit as read', () => {
  test.each([
    ['3.4', 'mil', '= 86.36 µm'],
    ['2.5', 'in', '= 63.5 mm'],
    ['12.1', 'bar', '= 1.21 MPa'],
    ['68', 'degF', '= 20 °C'],
    ['66.3', 'degF', '≈ 19.056 °C'],
    ['175', 'psi', '≈ 1.2066 MPa'],
  ] as const)('%s %s', (text, unit, shown) => {
    expect(metricBeside(measured(text, unit))).toBe(shown)
  })
  test('metric units and hardness scales stand alone', () => {
    for (const unit of ['mm', 'um', 'MPa', 'degC', 'ShoreD', 'ShoreA', 'Barcol', 'g'] as const)
      expect(metricBeside(measured('7', unit))).toBeNull()
    expect(metricBeside({ kind: 'through-wall' })).toBeNull()
  })
  test('the figure stands beside the reading as keyed, in screens and dossier', () => {
    expect(showKept(measured('3.40', 'mil'))).toBe('3.40 mil (= 86.36 µm)')
    expect(withMetric('7.0 mm', measured('7.0', 'mm'))).toBe('7.0 mm')
  })
})

test('there and back changes no value, and showing never changes the digits that were recorded', () => {
  const convertible = UNITS.flatMap((from) =>
    UNITS.filter((to) => convertExact({ numerator: 1n, denominator: 1n }, from, to) !== null).map(
      (to): [Unit, Unit] => [from, to],
    ),
  )
  expect(convertible.length).toBeGreaterThan(UNITS.length)
  fc.assert(
    fc.property(
      fc.constantFrom(...convertible),
      fc.integer({ min: -99_999, max: 999_999 }),
      fc.integer({ min: 0, max: 4 }),
      ([from, to], digits, scale) => {
        const exact = fractionOf({ digits, scale })
        const there = convertExact(exact, from, to)
        const back = there && convertExact(there, to, from)
        expect(back !== null && compareFractions(back, exact)).toBe(0)
        const reading = { kind: 'number' as const, digits, scale, unit: from, text: 'kept' }
        withMetric(showReading(reading), reading)
        expect(reading).toEqual({ kind: 'number', digits, scale, unit: from, text: 'kept' })
        expect(parseReading(showReading(reading), from)).toMatchObject({ digits, scale, unit: from })
      },
    ),
    { numRuns: runsAsked() },
  )
})

test('hardness scales are never converted into each other', () => {
  const one = { numerator: 70n, denominator: 1n }
  for (const [from, to] of [
    ['ShoreD', 'ShoreA'],
    ['ShoreA', 'ShoreD'],
    ['ShoreD', 'Barcol'],
    ['Barcol', 'ShoreD'],
  ] as const)
    expect(convertExact(one, from, to)).toBeNull()
})
