import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { compareFractions } from '@/lib/domain/decimal'
import { convertExact } from '@/lib/domain/judge/exact-units'
import { judgePoint } from '@/lib/domain/judge/judge-criterion'
import { showFinding } from '@/lib/domain/judge/show-finding'
import { type Reading, UNITS } from '@/lib/domain/reading'
import { runsAsked } from '../../runs'
import { contextOf, criterion, limit, recordedAt } from './judge-fixtures'

fc.configureGlobal({ numRuns: runsAsked() })

const number = (kind: 'number' | 'below' | 'above') =>
  fc
    .integer({ min: 600, max: 900 })
    .map((digits): Reading => ({ kind, digits, scale: 1, unit: 'ShoreD', text: `${digits / 10}` }))
const reading = fc.oneof(
  { weight: 8, arbitrary: number('number') },
  number('below'),
  number('above'),
  fc.constantFrom<Reading>(
    { kind: 'through-wall' },
    { kind: 'no-access' },
    { kind: 'not-inspected' },
    { kind: 'not-applicable', reason: 'covered' },
  ),
)
const CRITERIA = [
  criterion({ kind: 'each', quantity: 'hardness', min: limit('74', 'ShoreD') }, '16', 'EACH'),
  criterion({ kind: 'mean', quantity: 'hardness', min: limit('77', 'ShoreD') }, '16', 'MEAN'),
  criterion({ kind: 'count', quantity: 'hardness', atLeast: 6 }, '16', 'COUNT'),
]
const results = (readings: Reading[]) =>
  judgePoint(
    contextOf(CRITERIA, [
      recordedAt('05-13 07:25', {
        type: 'hardness',
        readings: readings.map((one, index) => ({ mark: `M${index}`, reading: one })),
      }),
    ]),
  )
const verdicts = (readings: Reading[]) => results(readings).map((one) => one.verdict)

describe('readings in general', () => {
  it('more readings never turn a failed each into a pass, nor a complete count into an incomplete one', () => {
    fc.assert(
      fc.property(fc.array(reading, { maxLength: 12 }), fc.array(reading, { maxLength: 6 }), (some, more) => {
        const [before, after] = [verdicts(some), verdicts([...some, ...more])]
        if (before[0] === 'fail') expect(after[0]).toBe('fail')
        if (before[2] === 'pass') expect(after[2]).toBe('pass')
        expect(before[2]).not.toBe('fail')
      }),
    )
  })
  it('their order never changes a verdict, a mean or a worst reading', () => {
    fc.assert(
      fc.property(
        fc
          .array(reading, { maxLength: 12 })
          .chain((list) => fc.tuple(fc.constant(list), fc.shuffledSubarray(list, { minLength: list.length }))),
        ([list, shuffled]) => {
          const [a, b] = [results(list), results(shuffled)]
          expect(a.map((one) => one.verdict)).toEqual(b.map((one) => one.verdict))
          expect(a[1]?.figures.mean).toBe(b[1]?.figures.mean)
        },
      ),
    )
  })
  it('a pass has all that was planned and only numbers at or over the limit, or above it', () => {
    fc.assert(
      fc.property(fc.array(reading, { maxLength: 12 }), (list) => {
        const [each, mean, count] = results(list)
        const digits = list.flatMap((one) => (one.kind === 'number' || one.kind === 'above' ? [one.digits] : []))
        if (each?.verdict === 'pass')
          expect(
            digits.length >= 6 &&
              digits.every((one) => one >= 740) &&
              !list.some((one) => one.kind === 'below' || one.kind === 'through-wall'),
          ).toBe(true)
        if (mean?.verdict === 'pass')
          expect(digits.reduce((sum, one) => sum + one, 0) >= 770 * digits.length && count?.verdict === 'pass').toBe(
            true,
          )
      }),
    )
  })
  it('every result that did not pass says why in a sentence that ends with its clause', () => {
    fc.assert(
      fc.property(fc.array(reading, { maxLength: 12 }), (list) => {
        for (const result of results(list)) {
          expect(result.findings.length > 0).toBe(result.verdict !== 'pass')
          for (const finding of result.findings) expect(showFinding(finding)).toMatch(/^[^{}]*[a-z0-9) ]+\(7\.3\)\.$/)
        }
      }),
    )
  })
  it('converting there and back is exact, and only within one kind', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...UNITS),
        fc.constantFrom(...UNITS),
        fc.integer({ min: -1e6, max: 1e6 }),
        (from, to, digits) => {
          const value = { numerator: BigInt(digits), denominator: 1000n }
          const there = convertExact(value, from, to)
          const back = there ? convertExact(there, to, from) : value
          expect(back && compareFractions(back, value)).toBe(0)
        },
      ),
    )
    const one = { numerator: 1n, denominator: 1n }
    expect(convertExact(one, 'ShoreD', 'ShoreA')).toBeNull()
    expect(convertExact(one, 'Barcol', 'ShoreD')).toBeNull()
    expect(convertExact(one, 'K', 'degC')).toBeNull()
    expect(
      compareFractions(convertExact({ numerator: 50n, denominator: 1n }, 'degF', 'degC') ?? one, {
        numerator: 10n,
        denominator: 1n,
      }),
    ).toBe(0)
  })
})
