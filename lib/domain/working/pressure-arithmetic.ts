import { pressureHoldLiquid } from '@/lib/calc/pressure-hold'
import { isRefused } from '@/lib/calc/refusal'
import { showDecimal, toNumber } from '../decimal'
import { measuredExact, minusFraction } from '../judge/exact-units'
import type { JudgeContext } from '../judge/judge-context'
import { showExact } from '../judge/show-exact'
import type { DraftOf } from '../judge/yield-builder'
import { celsiusOf } from '../judge/yield-surface'
import type { Rule } from '../specification'

/** The drop of a pressure test with its numbers put in: plain where the steel kept its temperature, else through the correction. */
export function pressureArithmetic(
  { correction, maxDrop }: Extract<Rule, { kind: 'pressure-drop' }>,
  record: DraftOf<'pressure-test'>,
  design: JudgeContext['design'],
): string[] {
  const readings = (record.readings ?? []).filter((one) => one.at && one.pressure)
  const [first, last] = [readings[0], readings.at(-1)]
  const [p0, p1] = [measuredExact(first?.pressure, 'MPa'), measuredExact(last?.pressure, 'MPa')]
  const [t0, t1] = [celsiusOf(first?.steel), celsiusOf(last?.steel)]
  if (!first || !last || !p0 || !p1 || !t0 || !t1)
    return ['drop not computed: a pressure or a steel temperature is missing']
  const scale = Math.max(first.pressure.scale, last.pressure.scale)
  const rise = toNumber(t1) - toNumber(t0)
  const allowed = `allowed ${showDecimal(maxDrop)} MPa`
  if (rise === 0)
    return [
      `T₁ − T₀ = 0 K, so expected = p₀; drop = ${showExact(p0, scale)} − ${showExact(p1, scale)} = ${showExact(minusFraction(p0, p1), scale)} MPa, ${allowed}`,
    ]
  const [diameter, wall] = [measuredExact(design?.designDiameter, 'mm'), measuredExact(design?.designWall, 'mm')]
  if (!diameter || !wall) return ['drop not computed: diameter and wall of the design sheet are missing']
  const figures = {
    diameterMm: toNumber(diameter),
    wallMm: toNumber(wall),
    modulusMpa: toNumber(correction.modulusMPa),
    poissonRatio: toNumber(correction.poisson),
    pipeExpansionPerK: correction.alphaPerK,
    liquidExpansionPerK: correction.betaPerK,
    bulkModulusMpa: toNumber(correction.bulkModulusMPa),
  }
  const answer = pressureHoldLiquid({
    ...figures,
    p0Mpa: toNumber(p0),
    p1Mpa: toNumber(p1),
    t0C: toNumber(t0),
    t1C: toNumber(t1),
    ends: correction.ends,
    allowedDropMpa: null,
  })
  if (isRefused(answer)) return [`drop not computed: ${answer.refused.replaceAll('_', ' ')}`]
  const isFree = correction.ends === 'free'
  const nu = figures.poissonRatio
  const a = isFree ? 3 * correction.alphaPerK : 2 * (1 + nu) * correction.alphaPerK
  const c = isFree ? 1.25 - nu : 1 - nu ** 2
  return [
    `a = ${isFree ? `3 × ${correction.alphaPerK}` : `2 (1 + ${nu}) × ${correction.alphaPerK}`} = ${a.toExponential(3)} 1/K; c = ${isFree ? `5/4 − ${nu}` : `1 − ${nu}²`} = ${c.toFixed(4)}`,
    `dP/dT = (${correction.betaPerK} − ${a.toExponential(3)}) / (1/${figures.bulkModulusMpa} + ${c.toFixed(4)} × ${figures.diameterMm} / (${figures.modulusMpa} × ${figures.wallMm})) = ${answer.mpaPerK.toFixed(4)} MPa/K`,
    `expected = ${showExact(p0, scale)} + ${answer.mpaPerK.toFixed(4)} × ${rise.toFixed(1)} = ${answer.expectedMpa.toFixed(4)} MPa; drop = ${answer.expectedMpa.toFixed(4)} − ${showExact(p1, scale)} = ${answer.dropMpa.toFixed(4)} MPa, ${allowed}`,
  ]
}
