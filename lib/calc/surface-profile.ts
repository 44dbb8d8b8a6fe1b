import { defaulted, flag, list, notNegative, number, optional, whole } from '@/lib/calc/argument'
import { isAbove, isAtLeast, isAtMost, isBelow } from '@/lib/calc/comparison'
import { formula } from '@/lib/calc/formula'
import { refuse } from '@/lib/calc/refusal'
import { indicesWhere, meanOf, sampleSdOf } from '@/lib/calc/sample-statistics'

/**
 * Profile heights in um from replica tape readings: reading - film when `gross`, the reading itself when net.
 * Answers net heights, mean, sample sd (null for one reading), range and count. `film_um` comes from the tape in use
 * (about 50 um), never assumed; the required count comes from the edition in force.
 * Refuses `missing_gross`, `missing_film_um`, `too_few_readings`, `profile_not_positive` (reading not above the film).
 * @source ISO 8503-5, ASTM D4417 method C. Confidence high; required count medium.
 */
export const replicaProfile = formula(
  {
    readingsUm: list('readings_um', number('readings_um')),
    gross: flag('gross'),
    filmUm: optional(notNegative('film_um')),
    need: defaulted(whole('need', 1), 2),
  },
  ({ readingsUm, gross, filmUm, need }) => {
    if (gross && filmUm === null) return refuse('missing_film_um')
    if (readingsUm.length < need) return refuse('too_few_readings')
    const film = gross && filmUm !== null ? filmUm : 0
    if (readingsUm.some((reading) => !isAbove(reading, film))) return refuse('profile_not_positive')
    const netUm = readingsUm.map((reading) => reading - film)
    return {
      netUm,
      meanUm: meanOf(netUm),
      sdUm: sampleSdOf(netUm),
      rangeUm: Math.max(...netUm) - Math.min(...netUm),
      n: netUm.length,
    }
  },
)

/**
 * Mean and each reading (um) against a target, reported apart with the indices out of range; which of the two decides is the
 * specification's choice. End points pass; one limit alone is a target.
 * Refuses `no_target`, `target_reversed`, `no_readings`. @source the specification. Confidence high.
 */
export const profileVerdict = formula(
  {
    readingsUm: list('readings_um', notNegative('readings_um')),
    minUm: optional(notNegative('min_um')),
    maxUm: optional(notNegative('max_um')),
  },
  ({ readingsUm, minUm, maxUm }) => {
    if (minUm === null && maxUm === null) return refuse('no_target')
    const [lowest, highest] = [minUm ?? Number.NEGATIVE_INFINITY, maxUm ?? Number.POSITIVE_INFINITY]
    if (lowest > highest) return refuse('target_reversed')
    if (readingsUm.length === 0) return refuse('no_readings')
    const meanUm = meanOf(readingsUm)
    const lowAt = indicesWhere(readingsUm, (reading) => minUm !== null && isBelow(reading, minUm))
    const highAt = indicesWhere(readingsUm, (reading) => maxUm !== null && isAbove(reading, maxUm))
    return {
      meanUm,
      isMeanMet: (minUm === null || isAtLeast(meanUm, minUm)) && (maxUm === null || isAtMost(meanUm, maxUm)),
      isEachMet: lowAt.length === 0 && highAt.length === 0,
      lowAt,
      highAt,
    }
  },
)
