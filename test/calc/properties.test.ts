import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { conformanceProbability, decisionRule } from '@/lib/calc/decision-rule'
import { dewPoint } from '@/lib/calc/dew-point'
import { thicknessMap } from '@/lib/calc/thickness-map'
import { leakPressure, leakThickness } from '@/lib/calc/through-wall-leak'
import { potLife, workingTime } from '@/lib/calc/working-time'
import { wrapOverlap, wrapPliesAt } from '@/lib/calc/wrap-geometry'
import { runsAsked } from '../runs'
import { answered, real } from './property-inputs'

fc.configureGlobal({ numRuns: runsAsked() })

describe('climate and time', () => {
  test('the dew point is never above the air temperature', () => {
    fc.assert(
      fc.property(real(-45, 60), real(0.01, 100), (dryC, rhPct) => {
        expect(answered(dewPoint({ dryC, rhPct })).dewPointC).toBeLessThanOrEqual(dryC + 1e-9)
      }),
    )
  })

  const table = fc
    .tuple(
      fc.uniqueArray(fc.integer({ min: -5, max: 60 }), { minLength: 2, maxLength: 7 }),
      fc.array(fc.integer({ min: 1, max: 300 }), { minLength: 7, maxLength: 7 }),
    )
    .map(([temps, times]) => {
      const falling = times.slice(0, temps.length).sort((a, b) => b - a)
      return temps.sort((a, b) => a - b).map((tempC, index) => [tempC, falling[index] ?? 1] as const)
    })

  test('pot life never rises with temperature and stays between the rows, for both kinds of table', () => {
    fc.assert(
      fc.property(table, real(0, 1), real(0, 1), (rows, shareA, shareB) => {
        const temps = rows.map(([tempC]) => tempC)
        const [low, high] = [Math.min(...temps), Math.max(...temps)]
        const at = (share: number) => Math.min(high, low + share * (high - low))
        const [colder, warmer] = [at(Math.min(shareA, shareB)), at(Math.max(shareA, shareB))]
        for (const kind of ['step', 'interpolated'] as const) {
          const life = (tempC: number) => answered(workingTime({ table: rows, kind, tempC })).lifeMin
          expect(life(warmer)).toBeLessThanOrEqual(life(colder) * (1 + 1e-9))
          expect(life(colder)).toBeLessThanOrEqual((rows[0]?.[1] ?? 0) * (1 + 1e-9))
        }
      }),
    )
  })

  test('the order of the rows never changes the pot life', () => {
    fc.assert(
      fc.property(table, real(0, 1), (rows, share) => {
        const tempC = (rows[0]?.[0] ?? 0) + share * ((rows.at(-1)?.[0] ?? 0) - (rows[0]?.[0] ?? 0))
        expect(potLife({ table: [...rows].reverse(), tempC })).toEqual(potLife({ table: rows, tempC }))
      }),
    )
  })
})

describe('geometry', () => {
  const map = fc.array(fc.array(real(1, 20), { minLength: 4, maxLength: 4 }), { minLength: 3, maxLength: 3 })
  const place = { axialMm: [0, 140, 330], anglesDeg: [10, 90, 180, 270] }

  test('the map is the same at 0 and 360 degrees and at every further turn', () => {
    fc.assert(
      fc.property(map, real(0, 330), fc.integer({ min: -720, max: 720 }), (values, xMm, angleDeg) => {
        const at = (angle: number) => answered(thicknessMap({ ...place, values, xMm, angleDeg: angle })).value
        expect(at(360)).toBe(at(0))
        expect(at(angleDeg + 360)).toBeCloseTo(at(angleDeg), 9)
      }),
    )
  })

  test('the map never shows less than its smallest nor more than its largest reading', () => {
    fc.assert(
      fc.property(map, real(0, 330), real(-360, 720), (values, xMm, angleDeg) => {
        const { value } = answered(thicknessMap({ ...place, values, xMm, angleDeg }))
        expect(value).toBeGreaterThanOrEqual(Math.min(...values.flat()) - 1e-9)
        expect(value).toBeLessThanOrEqual(Math.max(...values.flat()) + 1e-9)
      }),
    )
  })

  test('plies inside a wrap stay between the thinnest and the thickest count', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 20, max: 300 }),
        fc.integer({ min: 1, max: 100 }),
        real(0, 1),
        (bandMm, part, share) => {
          const pitchMm = (bandMm * part) / 100
          const plies = answered(wrapOverlap({ bandMm, pitchMm }))
          const turns = 3 * plies.pliesMax + 3
          const xMm = bandMm + share * (turns * pitchMm - 2 * bandMm)
          fc.pre(xMm >= bandMm && xMm < (turns - 1) * pitchMm)
          const found = answered(wrapPliesAt({ bandMm, pitchMm, turns, xMm })).plies
          expect(found).toBeGreaterThanOrEqual(plies.pliesMin)
          expect(found).toBeLessThanOrEqual(plies.pliesMax)
        },
      ),
    )
  })

  const hole = fc.record({
    holeMm: real(1, 80),
    serviceFactor: real(0.05, 1),
    toughnessJm2: real(20, 500),
    poissonRatio: real(0, 0.5),
    hoopModulusMpa: real(5e3, 8e4),
    axialModulusMpa: real(5e3, 8e4),
    shearModulusMpa: real(500, 1e4),
  })

  test('a thicker laminate never holds less over a hole, and none reaches the limit', () => {
    fc.assert(
      fc.property(hole, real(0.5, 60), real(1, 4), (given, thicknessMm, times) => {
        const thin = answered(leakPressure({ ...given, thicknessMm }))
        const thick = answered(leakPressure({ ...given, thicknessMm: thicknessMm * times }))
        expect(thick.pressureMpa).toBeGreaterThanOrEqual(thin.pressureMpa)
        expect(thick.pressureMpa).toBeLessThan(thick.limitMpa)
      }),
    )
  })

  test('the thickness found for a pressure holds it, and the thickness found for more is not thinner', () => {
    fc.assert(
      fc.property(hole, real(0.01, 0.98), real(0.2, 1), (given, share, less) => {
        const { limitMpa } = answered(leakPressure({ ...given, thicknessMm: 1 }))
        const pressureMpa = share * limitMpa
        const { thicknessMm } = answered(leakThickness({ ...given, pressureMpa }))
        expect(answered(leakPressure({ ...given, thicknessMm })).pressureMpa).toBeGreaterThanOrEqual(pressureMpa)
        const weaker = answered(leakThickness({ ...given, pressureMpa: pressureMpa * less }))
        expect(weaker.thicknessMm).toBeLessThanOrEqual(thicknessMm)
      }),
    )
  })
})

describe('decision', () => {
  const limits = fc.tuple(real(-100, 100), real(0, 50)).map(([lower, width]) => ({ lower, upper: lower + width }))

  test('a guard band never widens acceptance: what passes with it passes without it and with any smaller one', () => {
    fc.assert(
      fc.property(limits, real(-150, 200), real(0, 20), real(0, 1), (between, x, expandedU, share) => {
        const guarded = answered(decisionRule({ x, ...between, expandedU })).verdict
        const looser = answered(decisionRule({ x, ...between, expandedU: expandedU * share })).verdict
        if (guarded === 'pass') expect(looser).toBe('pass')
        if (guarded === 'fail') expect(looser).toBe('fail')
      }),
    )
  })

  test('the probability of conformance stays between 0 and 1 and is at least 0.95 where the rule passes', () => {
    fc.assert(
      fc.property(limits, real(-150, 200), real(0.01, 20), (between, x, expandedU) => {
        const { p } = answered(conformanceProbability({ x, ...between, expandedU }))
        expect(p).toBeGreaterThanOrEqual(0)
        expect(p).toBeLessThanOrEqual(1)
        if (answered(decisionRule({ x, ...between, expandedU })).verdict === 'pass') expect(p).toBeGreaterThan(0.95)
      }),
    )
  })
})
