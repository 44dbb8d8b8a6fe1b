import { pressureHoldLiquid } from '@/lib/calc/pressure-hold'
import { isRefused } from '@/lib/calc/refusal'
import { compareFractions, type Fraction, toNumber } from '../decimal'
import type { Rule } from '../specification'
import { measuredExact } from './exact-units'
import type { JudgeContext } from './judge-context'
import type { DraftOf } from './yield-builder'
import { celsiusOf } from './yield-surface'

type TestReading = NonNullable<DraftOf<'pressure-test'>['readings']>[number]
type Correction = Extract<Rule, { kind: 'pressure-drop' }>['correction']

/** Pressures of two readings, exact, in MPa; `corrected` is null where the steel kept its temperature and nothing is to correct. */
export type CorrectedHold = {
  p0: Fraction
  p1: Fraction
  /** How far the steel warmed, K. */
  riseK: number
  corrected: { mpaPerK: number; expectedMpa: number; dropMpa: number; diameterMm: number; wallMm: number } | null
}

/**
 * Correct the later of two readings of a pressure test for the steel's temperature, by the figures of the specification and the diameter and wall of the design sheet.
 * Answers with `code` when it cannot: `unit-differs`, `temperature-missing`, `design-missing`, `not-computed` with the refusal of the formula. @source lib/calc/pressure-hold
 */
export function correctedHold(
  correction: Correction,
  first: TestReading,
  later: TestReading,
  design: JudgeContext['design'] | null,
): CorrectedHold | { code: string; detail?: string } {
  const [p0, p1] = [measuredExact(first.pressure, 'MPa'), measuredExact(later.pressure, 'MPa')]
  const [t0, t1] = [celsiusOf(first.steel), celsiusOf(later.steel)]
  if (!p0 || !p1) return { code: 'unit-differs' }
  if (!t0 || !t1) return { code: 'temperature-missing', detail: 'steel at the first and last reading' }
  const riseK = toNumber(t1) - toNumber(t0)
  if (compareFractions(t0, t1) === 0) return { p0, p1, riseK, corrected: null }
  const [diameter, wall] = [measuredExact(design?.designDiameter, 'mm'), measuredExact(design?.designWall, 'mm')]
  if (!diameter || !wall) return { code: 'design-missing', detail: 'diameter and wall' }
  const [diameterMm, wallMm] = [toNumber(diameter), toNumber(wall)]
  const answer = pressureHoldLiquid({
    p0Mpa: toNumber(p0),
    p1Mpa: toNumber(p1),
    t0C: toNumber(t0),
    t1C: toNumber(t1),
    diameterMm,
    wallMm,
    modulusMpa: toNumber(correction.modulusMPa),
    poissonRatio: toNumber(correction.poisson),
    pipeExpansionPerK: correction.alphaPerK,
    liquidExpansionPerK: correction.betaPerK,
    bulkModulusMpa: toNumber(correction.bulkModulusMPa),
    ends: correction.ends,
    allowedDropMpa: null,
  })
  if (isRefused(answer)) return { code: 'not-computed', detail: answer.refused }
  const { mpaPerK, expectedMpa, dropMpa } = answer
  return { p0, p1, riseK, corrected: { mpaPerK, expectedMpa, dropMpa, diameterMm, wallMm } }
}
