import {
  type Argument,
  defaulted,
  factorUpToOne,
  flag,
  list,
  missingAs,
  number,
  oneOf,
  optional,
  positive,
  whole,
} from '@/lib/calc/argument'
import { isAbove, isAtLeast, isBelow } from '@/lib/calc/comparison'
import { formula } from '@/lib/calc/formula'
import { isRefused, type Refusal, refuse } from '@/lib/calc/refusal'
import { indicesWhere, meanOf, medianOf, sampleSdOf } from '@/lib/calc/sample-statistics'

export type HardnessScale = 'shore_d' | 'barcol'

const scale: Argument<HardnessScale | null, HardnessScale> = oneOf('scale', ['shore_d', 'barcol'])
const readings = missingAs('no_readings', list('readings', number('readings')))

/** Readings for a barcol mean, by expected value: ASTM D2583. The next lower row counts. Confidence medium. */
const BARCOL_COUNTS: Readonly<
  Record<'reinforced' | 'homogeneous', ReadonlyArray<readonly [expected: number, count: number]>>
> = {
  reinforced: [
    [30, 29],
    [40, 22],
    [50, 16],
    [60, 10],
    [70, 5],
  ],
  homogeneous: [
    [20, 9],
    [30, 8],
    [40, 7],
    [50, 6],
    [60, 5],
    [70, 4],
    [80, 3],
  ],
}
const SHORE_D_COUNT = 5

function checkReadings(values: readonly number[]): Refusal | null {
  if (values.length === 0) return refuse('no_readings')
  return values.some((value) => value < 0 || value > 100) ? refuse('reading_out_of_scale') : null
}

/**
 * Count, mean, median, sample sd (null for one reading), least and greatest of hardness readings on one scale, 0..100.
 * Refuses `no_readings`, `reading_out_of_scale`, `unknown_scale`. Scales are never converted.
 * @source ISO 868, ASTM D2240 (Shore D); ASTM D2583, EN 59 (barcol). Statistics high.
 */
export const hardnessStatistics = formula({ readings, scale }, ({ readings: values }) => {
  const problem = checkReadings(values)
  if (problem !== null) return problem
  return {
    n: values.length,
    mean: meanOf(values),
    median: medianOf(values),
    sd: sampleSdOf(values),
    min: Math.min(...values),
    max: Math.max(...values),
  }
})

/**
 * Number of readings a hardness value needs: Shore D five; barcol by the expected value, next lower row, for reinforced or
 * homogeneous material. Refuses `below_table`, `expected_out_of_scale`, `missing_expected`, `unknown_scale`.
 * @source ISO 868, ASTM D2240; ASTM D2583, EN 59 (medium).
 */
export const hardnessRequiredCount = formula(
  { scale, expected: optional(number('expected')), reinforced: defaulted(flag('reinforced'), true) },
  ({ scale: on, expected, reinforced }) => {
    if (on === 'shore_d') return { count: SHORE_D_COUNT }
    if (expected === null) return refuse('missing_expected')
    if (isAbove(expected, 100)) return refuse('expected_out_of_scale')
    const rows = BARCOL_COUNTS[reinforced ? 'reinforced' : 'homogeneous']
    const row = rows.findLast(([from]) => isAtLeast(expected, from))
    return row === undefined ? refuse('below_table') : { count: row[1] }
  },
)

function shareOf(reference: number | null, fraction: number | null): number | Refusal {
  if (reference === null) return refuse('missing_reference')
  return fraction === null ? refuse('missing_fraction') : reference * fraction
}

/**
 * Hardness against a required value, given or reference times fraction (share of the value found in qualification): by mean, by
 * median and by each reading, kept apart. A short count is reported apart from the verdict.
 * Refuses `missing_reference`, `missing_fraction`, and what {@link hardnessStatistics} refuses.
 * @source ISO 24817 and ASME PCC-2 use a share, an input here (medium). Mean against median as the reported value medium.
 */
export const hardnessVerdict = formula(
  {
    readings,
    scale,
    required: optional(number('required')),
    count: defaulted(whole('count', 1), 5),
    reference: optional(positive('reference')),
    fraction: optional(factorUpToOne('fraction')),
  },
  ({ readings: values, required, count, reference, fraction }) => {
    const problem = checkReadings(values)
    if (problem !== null) return problem
    const needed = required ?? shareOf(reference, fraction)
    if (isRefused(needed)) return needed
    const lowAt = indicesWhere(values, (value) => isBelow(value, needed))
    return {
      mean: meanOf(values),
      required: needed,
      isCountMet: values.length >= count,
      isMeanMet: isAtLeast(meanOf(values), needed),
      isMedianMet: isAtLeast(medianOf(values), needed),
      isEachMet: lowAt.length === 0,
      lowAt,
    }
  },
)

/** Whether two values are on one scale. Refuses `scales_differ`: hardness scales are never converted. */
export const hardnessSameScale = formula(
  { a: oneOf('a', ['shore_d', 'barcol']), b: oneOf('b', ['shore_d', 'barcol']) },
  ({ a, b }) => (a === b ? { isSame: true as const } : refuse('scales_differ')),
)
