import { defaulted, list, notNegative, oneOf, optional, positive, whole } from '@/lib/calc/argument'
import { isAtLeast, isAtMost, isBelow } from '@/lib/calc/comparison'
import { formula } from '@/lib/calc/formula'
import { refuse } from '@/lib/calc/refusal'
import { meanOf } from '@/lib/calc/sample-statistics'

interface Spots {
  readonly means: readonly number[]
  readonly areaMean: number
  readonly readings: readonly number[]
  readonly min: number
  readonly max: number | null
}

const isWithin = (value: number, max: number | null): boolean => max === null || isAtMost(value, max)

function meetsStrict({ means, readings, min, max }: Spots): boolean {
  return (
    readings.every((reading) => isAtLeast(reading, 0.8 * min)) &&
    means.every((mean) => isAtLeast(mean, min) && isWithin(mean, max))
  )
}

function meetsPa2({ means, areaMean, min, max }: Spots): boolean {
  const spotMax = max === null ? null : 1.2 * max
  return (
    means.every((mean) => isAtLeast(mean, 0.8 * min) && isWithin(mean, spotMax)) &&
    isAtLeast(areaMean, min) &&
    isWithin(areaMean, max)
  )
}

function meetsIso({ readings, min, max }: Spots): boolean {
  const belowCount = readings.filter((reading) => isBelow(reading, min)).length
  return (
    isAtLeast(meanOf(readings), min) &&
    readings.every((reading) => isAtLeast(reading, 0.8 * min) && isWithin(reading, max)) &&
    belowCount * 5 < readings.length
  )
}

const RULES = { strict: meetsStrict, pa2: meetsPa2, iso: meetsIso } as const

/**
 * Spot thickness (one unit throughout) under a named rule set, each spot with at least `perSpot` readings:
 * `strict` each reading >= 0.8 min and each spot mean in [min, max]: a house rule, no standard's exact text;
 * `pa2` spot means in [0.8 min, 1.2 max], mean of `areaSpots` spots in [min, max], single readings not judged (high);
 * `iso` mean of all >= min, each >= 0.8 min, fewer than 20 % below min, none above max (medium at exactly 20 %).
 * All three are written for paint films: their use on laminates is an agreement. Refuses `too_few_readings`,
 * `too_few_spots`, `unknown_rule`, `limits_reversed`.
 * @source SSPC-PA 2 level 3; ISO 19840.
 */
export const thicknessSpots = formula(
  {
    spots: list('spots', list('spots', notNegative('spots'))),
    min: positive('min_v'),
    max: optional(positive('max_v')),
    rule: defaulted(oneOf('rule', ['strict', 'pa2', 'iso']), 'strict'),
    perSpot: defaulted(whole('per_spot', 1), 3),
    areaSpots: defaulted(whole('area_spots', 1), 5),
  },
  ({ spots, min, max, rule, perSpot, areaSpots }) => {
    if (max !== null && max < min) return refuse('limits_reversed')
    if (spots.some((spot) => spot.length < perSpot)) return refuse('too_few_readings')
    if (spots.length < (rule === 'pa2' ? areaSpots : 1)) return refuse('too_few_spots')
    const means = spots.map(meanOf)
    const areaMean = meanOf(means)
    return { spotMeans: means, areaMean, isMet: RULES[rule]({ means, areaMean, readings: spots.flat(), min, max }) }
  },
)
