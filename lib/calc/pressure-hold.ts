import { defaulted, notNegative, number, oneOf, optional, poisson, positive } from '@/lib/calc/argument'
import { isAbove, isAtMost, isBelow } from '@/lib/calc/comparison'
import { formula } from '@/lib/calc/formula'
import { refuse } from '@/lib/calc/refusal'

export type HoldVerdict = 'pass' | 'fail' | 'unexplained_rise'

/** `pass` within the allowed drop, `fail` beyond it, `unexplained_rise` when pressure rose by more than that. */
function judgeDrop(drop: number, allowed: number): HoldVerdict {
  if (isAbove(-drop, allowed)) return 'unexplained_rise'
  return isAtMost(drop, allowed) ? 'pass' : 'fail'
}

const judgeDropOrNull = (drop: number, allowed: number | null): HoldVerdict | null =>
  allowed === null ? null : judgeDrop(drop, allowed)

/**
 * Pressure hold without temperature: drop = p0 - p1 against an allowed drop, or an allowed fraction of p0. One pressure unit.
 * Refuses `held_too_short`, `missing_held_min` when a required time is given, `no_limit`.
 * @source practice of hydrostatic testing; the limit is the specification's. Confidence high.
 */
export const pressureHoldSimple = formula(
  {
    p0: notNegative('p0'),
    p1: notNegative('p1'),
    allowedDrop: optional(notNegative('allowed_drop')),
    allowedFraction: optional(notNegative('allowed_fraction')),
    heldMin: optional(notNegative('held_min')),
    requiredMin: optional(notNegative('required_min')),
  },
  ({ p0, p1, allowedDrop, allowedFraction, heldMin, requiredMin }) => {
    if (requiredMin !== null) {
      if (heldMin === null) return refuse('missing_held_min')
      if (isBelow(heldMin, requiredMin)) return refuse('held_too_short')
    }
    const allowed = allowedDrop ?? (allowedFraction === null ? null : allowedFraction * p0)
    if (allowed === null) return refuse('no_limit')
    return { drop: p0 - p1, allowed, verdict: judgeDrop(p0 - p1, allowed) }
  },
)

/**
 * Pressure hold of a liquid-filled pipe corrected for temperature (MPa, degC, mm, 1/K):
 * dP/dT = (beta - a_v)/(1/K + c D/(E t)); free ends a_v = 3 a, c = 5/4 - nu; anchored a_v = 2 (1 + nu) a, c = 1 - nu².
 * expected = p0 + dP/dT (t1 - t0); drop = expected - p1. Verdict null when no allowed drop is given.
 * Refuses `unknown_ends`, `expected_below_zero`.
 * @source thin-cylinder strains, rigid-wall limit (beta - a_v) K. High as mechanics; beta of water moves fast with
 * temperature (medium). About 0.3 MPa per K for water in steel; trapped air breaks it.
 */
export const pressureHoldLiquid = formula(
  {
    p0Mpa: notNegative('p0_MPa'),
    p1Mpa: notNegative('p1_MPa'),
    t0C: number('t0_C'),
    t1C: number('t1_C'),
    diameterMm: positive('D_mm'),
    wallMm: positive('wall_mm'),
    modulusMpa: positive('E_MPa'),
    poissonRatio: poisson('nu'),
    pipeExpansionPerK: notNegative('alpha'),
    liquidExpansionPerK: number('beta'),
    bulkModulusMpa: positive('K_MPa'),
    ends: defaulted(oneOf('ends', ['free', 'anchored']), 'free'),
    allowedDropMpa: optional(notNegative('allowed_drop')),
  },
  (hold) => {
    const { pipeExpansionPerK: alpha, poissonRatio: nu } = hold
    const isFree = hold.ends === 'free'
    const volumeExpansionPerK = isFree ? 3 * alpha : 2 * (1 + nu) * alpha
    const restraint = isFree ? 1.25 - nu : 1 - nu ** 2
    const compliance = 1 / hold.bulkModulusMpa + (restraint * hold.diameterMm) / (hold.modulusMpa * hold.wallMm)
    const mpaPerK = (hold.liquidExpansionPerK - volumeExpansionPerK) / compliance
    const warmingMpa = mpaPerK * (hold.t1C - hold.t0C)
    if (isBelow(hold.p0Mpa, -warmingMpa)) return refuse('expected_below_zero')
    const expectedMpa = hold.p0Mpa + warmingMpa
    const dropMpa = expectedMpa - hold.p1Mpa
    return { mpaPerK, expectedMpa, dropMpa, verdict: judgeDropOrNull(dropMpa, hold.allowedDropMpa) }
  },
)

const ABSOLUTE_ZERO_C = -273.15

/**
 * Pressure hold of a gas-filled pipe, gauge pressures and barometer in one unit, degC: p1 expected, absolute = p0 (T1/T0).
 * Loss of mass = 1 - (p1/T1)/(p0/T0) on absolute pressures. `atm1` left out means the barometer did not move.
 * Refuses `missing_atm0` (gauge ratios are wrong), `below_absolute_zero`, `absolute_pressure_not_positive`.
 * @source ideal gas. High below about 10 bar; real-gas factor neglected.
 */
export const pressureHoldGas = formula(
  {
    p0Gauge: number('p0_gauge'),
    p1Gauge: number('p1_gauge'),
    atm0: positive('atm0'),
    atm1: optional(positive('atm1')),
    t0C: number('t0_C'),
    t1C: number('t1_C'),
    allowedDrop: optional(notNegative('allowed_drop')),
  },
  ({ p0Gauge, p1Gauge, atm0, atm1, t0C, t1C, allowedDrop }) => {
    if (t0C <= ABSOLUTE_ZERO_C || t1C <= ABSOLUTE_ZERO_C) return refuse('below_absolute_zero')
    const barometer1 = atm1 ?? atm0
    const p0 = p0Gauge + atm0
    const p1 = p1Gauge + barometer1
    if (p0 <= 0 || p1 < 0) return refuse('absolute_pressure_not_positive')
    const warming = (t1C - ABSOLUTE_ZERO_C) / (t0C - ABSOLUTE_ZERO_C)
    const expectedGauge = p0 * warming - barometer1
    const drop = expectedGauge - p1Gauge
    return {
      expectedGauge,
      drop,
      massLostFraction: 1 - p1 / (p0 * warming),
      verdict: judgeDropOrNull(drop, allowedDrop),
    }
  },
)
