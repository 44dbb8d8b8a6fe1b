import { showDecimal, toNumber } from '../decimal'
import { correctedHold } from '../judge/corrected-hold'
import { minusFraction } from '../judge/exact-units'
import type { JudgeContext } from '../judge/judge-context'
import { showExact } from '../judge/show-exact'
import type { DraftOf } from '../judge/yield-builder'
import type { Rule } from '../specification'

const MISSING = 'a pressure or a steel temperature is missing'
const WHY_NOT: Record<string, string> = {
  'unit-differs': MISSING,
  'temperature-missing': MISSING,
  'design-missing': 'diameter and wall of the design sheet are missing',
}

/** The drop of a pressure test with its numbers put in: plain where the steel kept its temperature, else through the correction. */
export function pressureArithmetic(
  { correction, maxDrop }: Extract<Rule, { kind: 'pressure-drop' }>,
  record: DraftOf<'pressure-test'>,
  design: JudgeContext['design'],
): string[] {
  const readings = (record.readings ?? []).filter((one) => one.at && one.pressure)
  const [first, last] = [readings[0], readings.at(-1)]
  if (!first || !last) return [`drop not computed: ${MISSING}`]
  const hold = correctedHold(correction, first, last, design)
  if ('code' in hold)
    return [`drop not computed: ${WHY_NOT[hold.code] ?? hold.detail?.replaceAll('_', ' ') ?? hold.code}`]
  const { p0, p1, riseK, corrected } = hold
  const scale = Math.max(first.pressure.scale, last.pressure.scale)
  const allowed = `allowed ${showDecimal(maxDrop)} MPa`
  if (!corrected)
    return [
      `T₁ − T₀ = 0 K, so expected = p₀; drop = ${showExact(p0, scale)} − ${showExact(p1, scale)} = ${showExact(minusFraction(p0, p1), scale)} MPa, ${allowed}`,
    ]
  const { mpaPerK, expectedMpa, dropMpa, diameterMm, wallMm } = corrected
  const isFree = correction.ends === 'free'
  const nu = toNumber(correction.poisson)
  const a = isFree ? 3 * correction.alphaPerK : 2 * (1 + nu) * correction.alphaPerK
  const c = isFree ? 1.25 - nu : 1 - nu ** 2
  return [
    `a = ${isFree ? `3 × ${correction.alphaPerK}` : `2 (1 + ${nu}) × ${correction.alphaPerK}`} = ${a.toExponential(3)} 1/K; c = ${isFree ? `5/4 − ${nu}` : `1 − ${nu}²`} = ${c.toFixed(4)}`,
    `dP/dT = (${correction.betaPerK} − ${a.toExponential(3)}) / (1/${toNumber(correction.bulkModulusMPa)} + ${c.toFixed(4)} × ${diameterMm} / (${toNumber(correction.modulusMPa)} × ${wallMm})) = ${mpaPerK.toFixed(4)} MPa/K`,
    `expected = ${showExact(p0, scale)} + ${mpaPerK.toFixed(4)} × ${riseK.toFixed(1)} = ${expectedMpa.toFixed(4)} MPa; drop = ${expectedMpa.toFixed(4)} − ${showExact(p1, scale)} = ${dropMpa.toFixed(4)} MPa, ${allowed}`,
  ]
}
