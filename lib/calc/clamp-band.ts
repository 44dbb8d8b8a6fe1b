import { defaulted, notNegative, positive, whole } from '@/lib/calc/argument'
import { roundUp } from '@/lib/calc/comparison'
import { formula } from '@/lib/calc/formula'

/**
 * Cut length of a clamp band in mm: sum over wraps k of G + 2 pi (build + (k + 1/2) t_band), plus the tail.
 * `girthMm` is the bare girth, `buildMm` the thickness already under the band. Refuses `missing_tail_mm`,
 * `not_positive_girth_mm`, `wraps_not_whole`.
 * @source geometry. Confidence high.
 */
export const clampBandLength = formula(
  {
    girthMm: positive('girth_mm'),
    tailMm: notNegative('tail_mm'),
    buildMm: defaulted(notNegative('build_mm'), 0),
    bandThicknessMm: defaulted(notNegative('band_thickness_mm'), 0),
    wraps: defaulted(whole('wraps', 1), 1),
  },
  ({ girthMm, tailMm, buildMm, bandThicknessMm, wraps }) => ({
    // The sum of (k + 1/2) for k from 0 to n - 1 is n²/2.
    lengthMm: wraps * (girthMm + 2 * Math.PI * buildMm) + Math.PI * bandThicknessMm * wraps ** 2 + tailMm,
  }),
)

/**
 * Number of bands over a length at a largest spacing, both mm: ceil(L/s) + 1, and the even step L/(n - 1).
 * The step is null for a single band. @source geometry. Confidence high.
 */
export const clampBandCount = formula(
  { lengthMm: notNegative('length_mm'), spacingMm: positive('spacing_mm') },
  ({ lengthMm, spacingMm }) => {
    const bands = roundUp(lengthMm / spacingMm) + 1
    return { bands, stepMm: bands === 1 ? null : lengthMm / (bands - 1) }
  },
)
