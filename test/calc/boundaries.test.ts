import { createHash } from 'node:crypto'
import { describe, expect, test } from 'vitest'
import { dayNumber, dayOfNumber, parseDay, showDay } from '@/lib/calc/calendar-day'
import { calibrationStatus } from '@/lib/calc/calibration'
import { writeCanonicalJson } from '@/lib/calc/canonical-json'
import { cleanlinessMeets, compareCleanliness, parseCleanliness } from '@/lib/calc/cleanliness-grade'
import { isAbove, isAtLeast, isAtMost, isBelow, roundDown, roundUp } from '@/lib/calc/comparison'
import { cureProgress } from '@/lib/calc/cure-progress'
import { decisionRule } from '@/lib/calc/decision-rule'
import { dewPoint } from '@/lib/calc/dew-point'
import { parseGs1 } from '@/lib/calc/gs1-elements'
import { firstBadLink } from '@/lib/calc/hash-chain'
import { parseHex, showHex } from '@/lib/calc/hex'
import { inclusionProof, leafHash, treeHead, verifyInclusion } from '@/lib/calc/merkle-tree'
import { normalDistribution } from '@/lib/calc/normal-distribution'
import { pressureHoldSimple } from '@/lib/calc/pressure-hold'
import { isRefused } from '@/lib/calc/refusal'
import { medianOf } from '@/lib/calc/sample-statistics'
import { lastGoodDay, shelfLife } from '@/lib/calc/shelf-life'
import { parseStrictJson } from '@/lib/calc/strict-json'
import { profileVerdict } from '@/lib/calc/surface-profile'
import { thicknessSpots } from '@/lib/calc/thickness-spots'
import { leakPressure, leakThickness } from '@/lib/calc/through-wall-leak'
import { dewPointFromWetBulb } from '@/lib/calc/wet-bulb'
import { workingTime } from '@/lib/calc/working-time'
import { wrapPliesAt } from '@/lib/calc/wrap-geometry'

const sha256 = (bytes: Uint8Array) => new Uint8Array(createHash('sha256').update(bytes).digest())
const TABLE = [
  [12, 40],
  [20, 25],
  [30, 12],
] as const

describe('comparisons', () => {
  test('0.1 + 0.2 meets 0.3 both ways and neither side is passed', () => {
    expect([
      isAtLeast(0.3, 0.1 + 0.2),
      isAtMost(0.1 + 0.2, 0.3),
      isAbove(0.1 + 0.2, 0.3),
      isBelow(0.3, 0.1 + 0.2),
    ]).toEqual([true, true, false, false])
    expect(isAtLeast(6.399, 6.4)).toBe(false)
  })
  test.each([
    [3, 3, 3],
    [3.0000000000000004, 3, 3],
    [2.9999999999999996, 3, 3],
    [2.4, 3, 2],
    [2.6, 3, 2],
    [0, 0, 0],
  ])('%d rounds up to %d and down to %d', (value, up, down) => {
    expect([roundUp(value), roundDown(value)]).toEqual([up, down])
  })
})

describe('climate', () => {
  test.each([-45, 60])('air at %d degC, the end of the range, still counts', (dryC) => {
    expect(dewPoint({ dryC, rhPct: 50 })).toHaveProperty('dewPointC')
  })
  test('a value that is not known is refused by name, and leaving it out is a type error', () => {
    expect(dewPoint({ dryC: 20, rhPct: null })).toEqual({ refused: 'missing_rh_pct' })
    // @ts-expect-error an argument without a default must be given, if only as null
    expect(dewPoint({ dryC: 20 })).toEqual({ refused: 'missing_rh_pct' })
  })
  test('an iced bulb in saturation over ice gives less than full humidity over water', () => {
    const found = dewPointFromWetBulb({ dryC: -5, wetC: -5, pressureHpa: 1000, iced: true })
    expect(isRefused(found) ? found : found.rhPct).toBeCloseTo(95.2, 0)
  })
})

describe('working time', () => {
  test.each([
    [5, 40],
    [12, 40],
    [12.1, 25],
    [20, 25],
    [29.9, 12],
    [30, 12],
  ])('a step table at %d degC gives the first row not colder: %d min', (tempC, lifeMin) => {
    expect(workingTime({ table: TABLE, kind: 'step', tempC })).toMatchObject({ lifeMin })
  })
  test('a step table has no value above its last row, an interpolated one also none below its first', () => {
    expect(workingTime({ table: TABLE, kind: 'step', tempC: 30.1 })).toEqual({ refused: 'outside_table' })
    expect(workingTime({ table: TABLE, kind: 'interpolated', tempC: 11.9 })).toEqual({ refused: 'outside_table' })
  })
  test('a step table of one row is a table, of no row is none', () => {
    expect(workingTime({ table: [[25, 30]], kind: 'step', tempC: 25 })).toMatchObject({ lifeMin: 30 })
    expect(workingTime({ table: [], kind: 'step', tempC: 25 })).toEqual({ refused: 'table_too_short' })
  })
  test.each([
    [39.9, true],
    [40, true],
    [40.1, false],
  ])('used %d min after mixing with a life of 40: %s', (elapsedMin, isMet) => {
    expect(workingTime({ table: TABLE, kind: 'step', tempC: 12, elapsedMin })).toMatchObject({ isMet })
  })
})

describe('cure', () => {
  test('steady temperature on a row is done exactly when its time has run', () => {
    const at = (until: number) =>
      cureProgress({
        table: TABLE,
        log: [
          [0, 20],
          [until, 20],
        ],
      })
    expect(at(24.9)).toMatchObject({ isCured: false, doneAt: null })
    const done = at(25)
    expect(isRefused(done) ? done : done.doneAt).toBeCloseTo(25, 6)
    const long = at(100)
    expect(isRefused(long) ? long : [long.doneAt, long.progress]).toEqual([expect.closeTo(25, 6), expect.closeTo(4, 9)])
  })
  test('conservative counts nothing below the table and no faster than the hottest row above it, and says so', () => {
    const count = (tempC: number) =>
      cureProgress({
        table: TABLE,
        log: [
          [0, tempC],
          [12, tempC],
        ],
        mode: 'conservative',
      })
    expect(count(11)).toMatchObject({ progress: 0, isCured: false, mode: 'conservative' })
    expect(count(80)).toMatchObject({ progress: expect.closeTo(1, 9), isCured: true })
  })
})

describe('cleanliness', () => {
  test.each(['Sa 2½', 'Sa2.5', 'sa 2,5', 'SA 2 1/2', ' Sa  2-1/2 ', 'Sa 2 ½'])('%s is Sa 2.5', (grade) => {
    expect(parseCleanliness({ grade })).toMatchObject({ family: 'Sa', level: '2.5', text: 'Sa 2.5' })
  })
  test('a better, an equal and a worse grade of one family', () => {
    expect(compareCleanliness({ a: 'Sa 3', b: 'Sa 2½' })).toEqual({ relation: 'better' })
    expect(compareCleanliness({ a: 'Sa 2.5', b: 'Sa 2½' })).toEqual({ relation: 'equal' })
    expect(cleanlinessMeets({ actual: 'Sa 2', required: 'Sa 2½' })).toMatchObject({ verdict: 'fails' })
  })
  test('an agreed pair serves one way only', () => {
    const cross = [['Wa 2', 'Sa 2']] as const
    expect(cleanlinessMeets({ actual: 'Wa 2½', required: 'Sa 1', cross })).toMatchObject({
      verdict: 'meets_by_agreement',
    })
    expect(cleanlinessMeets({ actual: 'Wa 2½', required: 'Sa 2½', cross })).toMatchObject({ verdict: 'not_comparable' })
    expect(cleanlinessMeets({ actual: 'Sa 3', required: 'Wa 1', cross })).toMatchObject({ verdict: 'not_comparable' })
  })
})

describe('profile and thickness', () => {
  test('one limit alone is a target', () => {
    expect(profileVerdict({ readingsUm: [40, 70], minUm: 50 })).toMatchObject({
      isMeanMet: true,
      lowAt: [0],
      highAt: [],
    })
    expect(profileVerdict({ readingsUm: [40, 70], maxUm: 54 })).toMatchObject({ isMeanMet: false, highAt: [1] })
  })
  const iso = (below: number) => [
    ...Array.from({ length: below }, () => [99, 110, 110]),
    ...Array.from({ length: 5 - below }, () => [110, 110, 110]),
  ]
  test.each([
    [2, true],
    [3, false],
  ])('under the iso rule %d of 15 readings below nominal: %s', (below, isMet) => {
    expect(thicknessSpots({ spots: iso(below), min: 100, rule: 'iso' })).toMatchObject({ isMet })
  })
  test('the area maximum of pa2 binds the mean, a spot may reach 1.2 of it', () => {
    const spots = [120, 95, 95, 95, 95].map((value) => [value, value, value])
    expect(thicknessSpots({ spots, min: 90, max: 100, rule: 'pa2' })).toMatchObject({ isMet: true, areaMean: 100 })
    expect(thicknessSpots({ spots, min: 90, max: 99, rule: 'pa2' })).toMatchObject({ isMet: false })
  })
  test('a turn covers its near edge and not its far edge', () => {
    const at = (xMm: number) => wrapPliesAt({ bandMm: 100, pitchMm: 50, turns: 3, xMm })
    expect([-0.1, 0, 49.9, 50, 199.9, 200].map((xMm) => at(xMm))).toEqual(
      [0, 1, 1, 2, 1, 0].map((plies) => ({ plies })),
    )
  })
  test('a median of an even count is the middle of the two middle values', () => {
    expect([medianOf([4, 1, 3, 2]), medianOf([9, 1, 5])]).toEqual([2.5, 5])
  })
  test('the thickness found for a leak holds the pressure, and a hole wide for the pipe is outside the equation', () => {
    const hole = { holeMm: 20, serviceFactor: 0.4, toughnessJm2: 180, poissonRatio: 0.3 } as const
    const laminate = { ...hole, hoopModulusMpa: 2e4, axialModulusMpa: 1e4, shearModulusMpa: 2000 }
    const found = leakThickness({ ...laminate, pressureMpa: 2, diameterMm: 10 })
    if (isRefused(found)) throw new Error(found.refused)
    expect(found.isValid).toBe(false)
    const held = leakPressure({ ...laminate, thicknessMm: found.thicknessMm })
    expect(isRefused(held) ? held : held.pressureMpa).toBeGreaterThanOrEqual(2)
  })
})

describe('hold and decision', () => {
  test.each([
    [1.9, 'pass'],
    [1.899, 'fail'],
    [2.1, 'pass'],
    [2.101, 'unexplained_rise'],
  ])('from 2.0 to %d with 0.1 allowed: %s', (p1, verdict) => {
    expect(pressureHoldSimple({ p0: 2, p1, allowedFraction: 0.05 })).toMatchObject({ verdict })
  })
  test.each([
    [7, 'pass'],
    [6.99, 'not_proven'],
    [6.2, 'not_proven'],
    [6.19, 'fail'],
  ])('%d against a lower limit of 6.6 with U 0.4: %s', (x, verdict) => {
    expect(decisionRule({ x, lower: 6.6, expandedU: 0.4 })).toMatchObject({ verdict })
  })
  test('with 2U wider than the tolerance nothing can pass', () => {
    expect(decisionRule({ x: 5, lower: 4, upper: 6, expandedU: 1.01 })).toEqual({
      verdict: 'not_proven',
      isAcceptanceZoneEmpty: true,
    })
    expect(decisionRule({ x: 5, lower: 4, upper: 6, expandedU: 1 })).toEqual({
      verdict: 'pass',
      isAcceptanceZoneEmpty: false,
    })
  })
  test.each([
    [0, 0.5],
    [1, 0.8413447460685429],
    [-1, 0.15865525393145705],
    [2, 0.9772498680518208],
    [-4.3, 8.539905471005582e-6],
    [-5, 2.866515718791939e-7],
    [Number.NEGATIVE_INFINITY, 0],
    [Number.POSITIVE_INFINITY, 1],
  ])('the normal distribution at %d', (z, p) => {
    expect(Math.abs(normalDistribution(z) - p)).toBeLessThanOrEqual(1e-12 * Math.max(p, 1e-3))
  })
})

describe('GS1 text', () => {
  test('each symbology mark and a leading separator are dropped', () => {
    for (const mark of [']C1', ']d2', ']Q3', ']e0', '\u001d', ']d2\u001d', '']) {
      expect(parseGs1({ text: `${mark}10B77` })).toMatchObject({ elements: { '10': 'B77' } })
    }
  })
  test('brackets in a value stay unless they hold two to four digits', () => {
    expect(parseGs1({ text: '(10)A(1)(B)(21)7' })).toMatchObject({ elements: { '10': 'A(1)(B)', '21': '7' } })
  })
  test('one element twice with one value is one element; expiry on the production day stands', () => {
    expect(parseGs1({ text: '10A\u001d10A' })).toMatchObject({ elements: { '10': 'A' } })
    expect(parseGs1({ text: '1127060117270601', referenceYear: 2026 })).toMatchObject({
      expiry: { date: '2027-06-01' },
    })
  })
})

describe('days', () => {
  test.each([
    ['1970-01-01', 0],
    ['2000-02-29', 11016],
    ['2026-11-25', 20782],
    ['1969-12-31', -1],
  ])('%s is day %d', (text, count) => {
    const day = parseDay(text)
    expect(day === null ? null : dayNumber(day)).toBe(count)
    expect(showDay(dayOfNumber(count))).toBe(text)
  })
  test('the last day of a batch is the earliest of its three ends', () => {
    const batch = { expiryDay: '2027-01-31', madeDay: '2026-08-31', lifeMonths: 6 }
    expect(lastGoodDay(batch)).toEqual({ lastDay: '2027-01-31' })
    expect(lastGoodDay({ ...batch, expiryDay: null })).toEqual({ lastDay: '2027-02-28' })
    expect(lastGoodDay({ ...batch, openedDay: '2026-12-30', openedDays: 3 })).toEqual({ lastDay: '2027-01-02' })
    expect(lastGoodDay({ ...batch, openedDay: '2026-12-30' })).toEqual({ lastDay: null })
    expect(lastGoodDay({})).toEqual({ lastDay: null })
  })
  test('a batch is valid on its last day and expired on the next; nothing known is unknown', () => {
    expect(shelfLife({ onDay: '2027-01-31', expiryDay: '2027-01-31' })).toMatchObject({ status: 'valid', daysLeft: 0 })
    expect(shelfLife({ onDay: '2027-02-01', expiryDay: '2027-01-31' })).toMatchObject({
      status: 'expired',
      daysLeft: -1,
    })
    expect(shelfLife({ onDay: '2027-02-01' })).toMatchObject({ status: 'unknown' })
  })
  test('the earlier of certificate and interval ends a calibration; without a calibration day it is unknown', () => {
    const instrument = { calibratedDay: '2026-01-31', intervalMonths: 1, dueDay: '2026-03-15' }
    expect(calibrationStatus({ onDay: '2026-02-28', ...instrument })).toMatchObject({
      status: 'valid',
      dueDay: '2026-02-28',
    })
    expect(calibrationStatus({ onDay: '2026-03-01', ...instrument })).toMatchObject({ status: 'overdue' })
    expect(calibrationStatus({ onDay: '2026-01-31', ...instrument })).toMatchObject({ status: 'valid' })
    expect(calibrationStatus({ onDay: '2026-01-30', ...instrument })).toMatchObject({ status: 'not_yet_calibrated' })
    expect(calibrationStatus({ onDay: '2026-03-01', dueDay: '2027-03-15' })).toMatchObject({ status: 'unknown' })
  })
})

describe('records', () => {
  const bytes = (hex: string) => parseHex(hex) ?? new Uint8Array(0)
  const eight = ['', '00', '10', '2021', '3031', '40414243', '5051525354555657', '606162636465666768696a6b6c6d6e6f']
  test('the public test tree of eight leaves has its published head', () => {
    const leaves = eight.map((hex) => leafHash(bytes(hex), sha256))
    expect(showHex(treeHead(leaves, sha256))).toBe('5dc9da79a70659a9ad559cb701ded9a2ab9d823aad2f4960cfe370eff4604328')
  })
  test('each leaf of each tree up to 17 is proved at its place, at no other, and by no longer or shorter proof', () => {
    for (let size = 1; size <= 17; size += 1) {
      const leaves = Array.from({ length: size }, (_, index) => leafHash(Uint8Array.of(index), sha256))
      const head = treeHead(leaves, sha256)
      for (const [index, leaf] of leaves.entries()) {
        const proof = inclusionProof(leaves, index, sha256)
        if (isRefused(proof)) throw new Error(proof.refused)
        const check = (claim: object) => verifyInclusion({ index, size, leaf, proof, head, ...claim }, sha256)
        expect(check({})).toBe(true)
        expect(check({ index: (index + 1) % (size + 1) })).toBe(false)
        expect(check({ proof: [...proof, leaf] })).toBe(false)
        if (proof.length > 0) expect(check({ proof: proof.slice(1) })).toBe(false)
      }
    }
  })
  test('an entry without a link and a link without an entry are bad', () => {
    const entry = Uint8Array.of(1)
    expect(firstBadLink([entry], [], null, sha256)).toBe(0)
    expect(firstBadLink([], [sha256(entry)], null, sha256)).toBe(0)
    expect(firstBadLink([entry], [], entry, sha256)).toEqual({ refused: 'digest_length' })
  })
  test.each([
    ['[-0,-0.0,1.0,6.40,1e21,1e-7]', '[0,0,1,6.4,1e+21,1e-7]'],
    ['9007199254740991', '9007199254740991'],
    ['1.0e20', '100000000000000000000'],
    ['"\\/\\b\\f\\n\\r\\t\\"\\\\"', '"/\\b\\f\\n\\r\\t\\"\\\\"'],
    ['{"__proto__":{"b":2,"a":1}}', '{"__proto__":{"a":1,"b":2}}'],
    [' [ null , true , false ] ', '[null,true,false]'],
    ['[]', '[]'],
  ])('%s is written %s', (text, written) => {
    const parsed = parseStrictJson(text)
    expect(isRefused(parsed) ? parsed : writeCanonicalJson(parsed.value)).toBe(written)
  })
  test('text that is not JSON is said to be so even after a duplicate key', () => {
    expect(parseStrictJson('{"a":1,"a":2')).toEqual({ refused: 'not_json' })
  })
})
