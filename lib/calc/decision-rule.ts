import { defaulted, list, notNegative, number, optional, positive } from '@/lib/calc/argument'
import { isAbove, isAtLeast, isAtMost, isBelow } from '@/lib/calc/comparison'
import { formula } from '@/lib/calc/formula'
import { normalDistribution } from '@/lib/calc/normal-distribution'
import { type Refusal, refuse } from '@/lib/calc/refusal'

const LIMITS = { lower: optional(number('lower')), upper: optional(number('upper')) }

interface Limits {
  readonly lower: number | null
  readonly upper: number | null
}

function checkLimits({ lower, upper }: Limits): Refusal | null {
  if (lower === null && upper === null) return refuse('no_limit')
  return lower !== null && upper !== null && lower > upper ? refuse('limits_reversed') : null
}

/**
 * Decision with a guard band of the expanded uncertainty U, same unit as x. Lower limit L: pass x >= L + U, fail x < L - U, else
 * not proven; upper mirrored; two-sided pass inside both guards, fail outside either limit by more than U. U = 0 is plain
 * acceptance, the limit passes; U missing is not 0. `isAcceptanceZoneEmpty`: 2U > H - L, nothing can pass.
 * Refuses `missing_U`, `negative_U`, `no_limit`, `limits_reversed`.
 * @source ISO 14253-1, JCGM 106 (guard band w = U). Confidence high; ownership of the end points medium.
 */
export const decisionRule = formula(
  { x: number('x'), ...LIMITS, expandedU: notNegative('U') },
  ({ x, lower, upper, expandedU: u }) => {
    const problem = checkLimits({ lower, upper })
    if (problem !== null) return problem
    const isAcceptanceZoneEmpty = lower !== null && upper !== null && isAbove(2 * u, upper - lower)
    const isOutside = (lower !== null && isBelow(x, lower - u)) || (upper !== null && isAbove(x, upper + u))
    const isInside =
      !isAcceptanceZoneEmpty &&
      (lower === null || isAtLeast(x, lower + u)) &&
      (upper === null || isAtMost(x, upper - u))
    const proven = isInside ? ('pass' as const) : ('not_proven' as const)
    return { verdict: isOutside ? ('fail' as const) : proven, isAcceptanceZoneEmpty }
  },
)

/**
 * Probability that the true value lies inside the limits: Phi((H - x)/u) - Phi((L - x)/u), u = U/k, flat prior. With U = 0 it is
 * 1 inside the limits, ends included, and 0 outside. 97.7 % at the guard of a one-sided limit with k = 2.
 * Refuses as {@link decisionRule}, and `not_positive_k`. @source JCGM 106. Confidence high.
 */
export const conformanceProbability = formula(
  { x: number('x'), ...LIMITS, expandedU: notNegative('U'), k: defaulted(positive('k'), 2) },
  ({ x, lower, upper, expandedU, k }) => {
    const problem = checkLimits({ lower, upper })
    if (problem !== null) return problem
    const u = expandedU / k
    if (u === 0) {
      const isInside = (lower === null || isAtLeast(x, lower)) && (upper === null || isAtMost(x, upper))
      return { p: isInside ? 1 : 0 }
    }
    const below = lower === null ? 0 : normalDistribution((lower - x) / u)
    const above = upper === null ? 0 : normalDistribution((x - upper) / u)
    return { p: Math.max(0, 1 - below - above) }
  },
)

/**
 * Combined standard uncertainty u = sqrt(sum u_i²) of uncorrelated standard uncertainties, and U = k u.
 * Refuses `no_components`, `negative_components`, `not_positive_k`. @source JCGM 100. Confidence high.
 */
export const combineUncertainty = formula(
  { components: list('components', notNegative('components')), k: defaulted(positive('k'), 2) },
  ({ components, k }) => {
    if (components.length === 0) return refuse('no_components')
    const u = Math.hypot(...components)
    return { u, expandedU: k * u }
  },
)
