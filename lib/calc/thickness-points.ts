import { defaulted, notNegative, positive, whole } from '@/lib/calc/argument'
import { roundUp } from '@/lib/calc/comparison'
import { formula } from '@/lib/calc/formula'

/**
 * Grid of thickness marks over a length and girth at a largest spacing, mm: axial ceil(L/s) + 1 with both ends, around
 * ceil(G/s) on the closed ring (at least `minAround`). Steps L/(n - 1) and G/n never exceed the spacing; the axial step is
 * null for one row. Refuses `not_positive_spacing_mm`. @source geometry. Confidence high.
 */
export const thicknessPoints = formula(
  {
    lengthMm: notNegative('length_mm'),
    girthMm: positive('girth_mm'),
    spacingMm: positive('spacing_mm'),
    minAround: defaulted(whole('min_around', 1), 1),
  },
  ({ lengthMm, girthMm, spacingMm, minAround }) => {
    const axial = roundUp(lengthMm / spacingMm) + 1
    const around = Math.max(minAround, roundUp(girthMm / spacingMm))
    return {
      axial,
      around,
      total: axial * around,
      axialStepMm: axial === 1 ? null : lengthMm / (axial - 1),
      aroundStepMm: girthMm / around,
    }
  },
)
