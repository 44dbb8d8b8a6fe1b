import { defaulted, notNegative, oneOf, positive, strain } from '@/lib/calc/argument'
import { formula } from '@/lib/calc/formula'

/**
 * Overlap in mm beyond the defect on each side, from the outside diameter and the pipe's wall: `iso` max(50, 2 sqrt(D t));
 * `pcc2` 2.5 sqrt(D t/2). Refuses `unknown_form`. @source ISO 24817 (medium); ASME PCC-2 Article 401 (high).
 */
export const laminateOverlap = formula(
  { diameterMm: positive('D_mm'), wallMm: positive('wall_mm'), form: defaulted(oneOf('form', ['iso', 'pcc2']), 'iso') },
  ({ diameterMm, wallMm, form }) => ({
    overlapMm:
      form === 'iso' ? Math.max(50, 2 * Math.sqrt(diameterMm * wallMm)) : 2.5 * Math.sqrt((diameterMm * wallMm) / 2),
  }),
)

/**
 * Bond length in mm that carries the laminate's axial load: k Ea eps_a t/tau, tau the lap shear strength in MPa. k = 1 is plain
 * balance (high), k = 3 as remembered (low). Refuses `strain_not_a_fraction`. @source ISO 24817, ASME PCC-2.
 */
export const laminateBondLength = formula(
  {
    axialModulusMpa: positive('Ea_MPa'),
    axialStrain: strain('eps_a'),
    thicknessMm: positive('t_mm'),
    shearMpa: positive('tau_MPa'),
    factor: defaulted(positive('factor'), 3),
  },
  ({ axialModulusMpa, axialStrain, thicknessMm, shearMpa, factor }) => ({
    overlapMm: (factor * axialModulusMpa * axialStrain * thicknessMm) / shearMpa,
  }),
)

/**
 * Total length in mm: 2 overlap + defect + 2 taper, taper = ratio t; ratio 5 as remembered (medium).
 * @source ISO 24817, ASME PCC-2 Article 401.
 */
export const laminateTotalLength = formula(
  {
    defectMm: notNegative('defect_mm'),
    overlapMm: notNegative('overlap_mm'),
    laminateMm: notNegative('laminate_mm'),
    taperRatio: defaulted(notNegative('taper_ratio'), 5),
  },
  ({ defectMm, overlapMm, laminateMm, taperRatio }) => {
    const taperMm = taperRatio * laminateMm
    return { taperMm, totalMm: 2 * overlapMm + defectMm + 2 * taperMm }
  },
)
