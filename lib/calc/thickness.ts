import { defaulted, list, notNegative, optional, positive, whole } from '@/lib/calc/argument'
import { isAtLeast, isBelow } from '@/lib/calc/comparison'
import { formula } from '@/lib/calc/formula'
import { refuse } from '@/lib/calc/refusal'
import { indicesWhere, meanOf } from '@/lib/calc/sample-statistics'

/**
 * Thinnest of direct readings in mm against the required thickness; `isMet` and `lowAt` are null without one.
 * Refuses `too_few_readings` below `need`, `negative_readings_mm`. @source smallest reading rules. Confidence high.
 */
export const thicknessDirect = formula(
  {
    readingsMm: list('readings_mm', notNegative('readings_mm')),
    requiredMm: optional(notNegative('required_mm')),
    need: defaulted(whole('need', 1), 1),
  },
  ({ readingsMm, requiredMm, need }) => {
    if (readingsMm.length < need) return refuse('too_few_readings')
    const minMm = Math.min(...readingsMm)
    return {
      minMm,
      meanMm: meanOf(readingsMm),
      n: readingsMm.length,
      isMet: requiredMm === null ? null : isAtLeast(minMm, requiredMm),
      lowAt: requiredMm === null ? null : indicesWhere(readingsMm, (reading) => isBelow(reading, requiredMm)),
    }
  },
)

/**
 * Mean thickness in mm from the girth before and after: (C1 - C0)/(2 pi), with u = sqrt(u0² + u1²)/(2 pi) when both
 * uncertainties are given. Same axial station, tape square to the axis. Always a mean: below the required minimum it disproves
 * it (`fail`), at or above it proves nothing (`not_proven`).
 * Refuses `girth_shrank`, `missing_before_mm`, and one uncertainty without the other.
 * @source geometry, JCGM 100. Confidence high.
 */
export const thicknessByGirth = formula(
  {
    beforeMm: positive('before_mm'),
    afterMm: positive('after_mm'),
    requiredMinMm: optional(notNegative('required_min_mm')),
    uBeforeMm: optional(notNegative('u_before_mm')),
    uAfterMm: optional(notNegative('u_after_mm')),
  },
  ({ beforeMm, afterMm, requiredMinMm, uBeforeMm, uAfterMm }) => {
    if (afterMm < beforeMm) return refuse('girth_shrank')
    if (uBeforeMm === null && uAfterMm !== null) return refuse('missing_u_before_mm')
    if (uBeforeMm !== null && uAfterMm === null) return refuse('missing_u_after_mm')
    const meanMm = (afterMm - beforeMm) / (2 * Math.PI)
    const disproof =
      requiredMinMm !== null && isBelow(meanMm, requiredMinMm) ? ('fail' as const) : ('not_proven' as const)
    return {
      meanMm,
      isMinimum: false as const,
      verdict: requiredMinMm === null ? null : disproof,
      uMm: uBeforeMm === null || uAfterMm === null ? null : Math.hypot(uBeforeMm, uAfterMm) / (2 * Math.PI),
    }
  },
)
