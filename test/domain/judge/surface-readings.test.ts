import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { compareFractions, fractionOf } from '@/lib/domain/decimal'
import { profileReadings, saltOf, saltReading } from '@/lib/domain/judge/surface-readings'
import { measured } from '@/lib/domain/reading'
import type { RecordOf } from '@/lib/domain/records/record'
import { runsAsked } from '@/test/runs'

const extraction = (blank: string, after: string, water = '15', area = '1250') => ({
  mark: 'S1',
  blank: measured(blank, 'uS/cm'),
  after: measured(after, 'uS/cm'),
  water: measured(water, 'ml'),
  area: measured(area, 'mm2'),
  factor: measured('5', 'ratio'),
})
const profile = (change: Partial<RecordOf<'profile'>>): { type: 'profile' } & Partial<RecordOf<'profile'>> => ({
  type: 'profile',
  method: 'replica tape',
  readings: [{ mark: 'P1', reading: measured('134', 'um') }],
  ...change,
})

describe('salts from conductivities', () => {
  test.each([
    ['1.2', '3.0', '15', '10.8'], // 6 × 1.8
    ['0', '2.5', '10', '10'], // 4 × 2.5
    ['2', '5', '3', '3.6'], // 1.2 × 3
  ])('blank %s, after %s, %s ml on 1250 mm²: %s mg/m²', (blank, after, water, shown) => {
    expect(saltReading(extraction(blank, after, water))).toMatchObject({ kind: 'number', unit: 'mg/m2', text: shown })
  })
  test('below its blank, or with a value missing, it is not usable: never zero', () => {
    expect(saltReading(extraction('3', '2'))).toEqual({ kind: 'not-inspected' })
    const { water, ...dry } = extraction('1', '2')
    expect([water.digits, saltReading(dry)]).toEqual([15, { kind: 'not-inspected' }])
    expect(saltReading(extraction('1', '2', '15', '0'))).toEqual({ kind: 'not-inspected' })
  })
  test('the figure never lies under the exact one', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 900 }),
        fc.integer({ min: 1, max: 400 }),
        fc.integer({ min: 100, max: 3000 }),
        (rise, water, area) => {
          const one = extraction('0.0', (rise / 10).toFixed(1), String(water), String(area))
          const [exact, shown] = [saltOf(one), saltReading(one)]
          expect(exact !== null && shown.kind === 'number' && compareFractions(fractionOf(shown), exact) >= 0).toBe(
            true,
          )
        },
      ),
      { numRuns: runsAsked() },
    )
  })
})

describe('profile by replica tape', () => {
  test('the film is taken off exactly, from the taps too', () => {
    const [one] = profileReadings(
      profile({
        tapeGross: 'yes',
        film: measured('50.8', 'um'),
        readings: [{ mark: 'P1', reading: measured('134', 'um'), taps: [measured('134', 'um')] }],
      }),
    )
    expect(one).toMatchObject({ reading: { digits: 832, scale: 1 }, taps: [{ digits: 832, scale: 1 }] })
  })
  test('net of the film it is as read', () => {
    expect(profileReadings(profile({ tapeGross: 'no' }))[0]?.reading).toMatchObject({ digits: 134 })
  })
  test.each([
    [{}],
    [{ tapeGross: 'yes' as const }],
    [{ tapeGross: 'yes' as const, film: measured('2', 'mil') }],
    [{ tapeGross: 'yes' as const, film: measured('134', 'um') }],
  ])('%j gives no height', (change) => {
    expect(profileReadings(profile(change))[0]?.reading).toEqual({ kind: 'not-inspected' })
  })
  test('other methods are taken as read', () => {
    expect(profileReadings(profile({ method: 'stylus' }))[0]?.reading).toMatchObject({ digits: 134 })
  })
})
