import { notNegative, positive, whole } from '@/lib/calc/argument'
import { formula } from '@/lib/calc/formula'

/** Putty in mm³: q pi/4 a h t, an ellipse of the hole's two sizes through the wall, times the specification's factor. @source geometry; the factor is the specification's. */
export const plugVolume = formula(
  {
    axialMm: positive('hole_axial_mm'),
    hoopMm: positive('hole_hoop_mm'),
    wallMm: positive('wall_mm'),
    times: positive('times_hole'),
  },
  ({ axialMm, hoopMm, wallMm, times }) => ({ volumeMm3: (times * Math.PI * axialMm * hoopMm * wallMm) / 4 }),
)

/** Mass of filler in g: length, girth and thickness in mm, density in g/cm³, spare as a percentage. @source geometry. */
export const fillerMass = formula(
  {
    lengthMm: positive('filler_length_mm'),
    girthMm: positive('filler_girth_mm'),
    thicknessMm: positive('filler_mm'),
    densityGcm3: positive('density'),
    sparePercent: notNegative('spare'),
  },
  ({ lengthMm, girthMm, thicknessMm, densityGcm3, sparePercent }) => {
    const netG = (lengthMm * girthMm * thicknessMm * densityGcm3) / 1000
    return { netG, massG: netG * (1 + sparePercent / 100) }
  },
)

/** The two parts of a mix in g: A = m 100/(100 + B), with B parts to 100 of A by mass. */
export const partsOfMix = formula(
  { massG: positive('mass_g'), partBPer100: positive('part_b') },
  ({ massG, partBPer100 }) => ({
    partAG: (massG * 100) / (100 + partBPer100),
    partBG: (massG * partBPer100) / (100 + partBPer100),
  }),
)

/**
 * Fabric for n plies over a length, mm: ply i lies at D + (2i - 1) t_ply, sum of pi D_i in m and times the length in m², each with waste as a percentage.
 * The filler's height under the plies is left out. @source geometry.
 */
export const fabricArea = formula(
  {
    diameterMm: positive('diameter_mm'),
    lengthMm: positive('length_mm'),
    plies: whole('plies', 1),
    plyMm: positive('ply_mm'),
    wastePercent: notNegative('wastage'),
  },
  ({ diameterMm, lengthMm, plies, plyMm, wastePercent }) => {
    // The sum of D + (2i - 1) t for i from 1 to n is n D + n² t.
    const girthsMm = Math.PI * (plies * diameterMm + plies ** 2 * plyMm)
    return {
      areaM2: (girthsMm * lengthMm) / 1e6,
      runM: (girthsMm / 1000) * (1 + wastePercent / 100),
    }
  },
)

/** Mixed resin in g for an area of plies in m²: area times the mass to one ply in g/m², with spare as a percentage. */
export const resinMass = formula(
  { areaM2: positive('area_m2'), perPlyGm2: positive('per_ply'), sparePercent: notNegative('spare') },
  ({ areaM2, perPlyGm2, sparePercent }) => {
    const netG = areaM2 * perPlyGm2
    return { netG, massG: netG * (1 + sparePercent / 100) }
  },
)
