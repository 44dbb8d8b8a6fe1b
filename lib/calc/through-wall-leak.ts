import { factorUpToOne, optional, poisson, positive } from '@/lib/calc/argument'
import { isAtLeast, isAtMost } from '@/lib/calc/comparison'
import { formula } from '@/lib/calc/formula'
import { refuse } from '@/lib/calc/refusal'

const HOLE = {
  holeMm: positive('d_mm'),
  serviceFactor: factorUpToOne('f'),
  toughnessJm2: positive('gamma_Jm2'),
  poissonRatio: poisson('nu'),
  hoopModulusMpa: positive('Ec_MPa'),
  axialModulusMpa: positive('Ea_MPa'),
  shearModulusMpa: positive('G_MPa'),
}

interface Hole {
  readonly holeMm: number
  readonly serviceFactor: number
  readonly toughnessJm2: number
  readonly poissonRatio: number
  readonly hoopModulusMpa: number
  readonly axialModulusMpa: number
  readonly shearModulusMpa: number
}

const BISECTIONS = 200

/** Toughness in N/mm: 1 J/m2 is 0.001 N/mm. */
const toughness = (hole: Hole): number => 0.001 * hole.toughnessJm2

/** (1 - nu²)/Eac with Eac = sqrt(Ec Ea), per MPa. */
const planeCompliance = (hole: Hole): number =>
  (1 - hole.poissonRatio ** 2) / Math.sqrt(hole.hoopModulusMpa * hole.axialModulusMpa)

function pressureAt(hole: Hole, thicknessMm: number): number {
  const d = hole.holeMm
  const bending = (3 * d ** 4) / (512 * thicknessMm ** 3) + d / Math.PI
  const shear = (3 * d ** 2) / (64 * hole.shearModulusMpa * thicknessMm)
  return hole.serviceFactor * Math.sqrt(toughness(hole) / (planeCompliance(hole) * bending + shear))
}

function limitPressure(hole: Hole): number {
  return hole.serviceFactor * Math.sqrt((toughness(hole) * Math.PI) / (planeCompliance(hole) * hole.holeMm))
}

/**
 * Pressure in MPa that a laminate of `thicknessMm` holds over a round through-wall hole of diameter d (mm, J/m2, MPa):
 * P = f sqrt(0.001 gamma/((1 - nu²)/Eac (3 d⁴/(512 t³) + d/pi) + 3 d²/(64 G t))), Eac = sqrt(Ec Ea), and the pressure that no
 * thickness passes, P_lim = f sqrt(0.001 gamma Eac pi/((1 - nu²) d)). Rises with t: thicker is never weaker.
 * Refuses `missing_gamma_Jm2` and other missing values by name, `f_above_one`.
 * @source ISO 24817 about 7.5; ASME PCC-2 Article 401 about 3.4. Form high, Eac medium.
 */
export const leakPressure = formula({ thicknessMm: positive('t_mm'), ...HOLE }, ({ thicknessMm, ...hole }) => ({
  pressureMpa: pressureAt(hole, thicknessMm),
  limitMpa: limitPressure(hole),
}))

/**
 * Thickness in mm at which {@link leakPressure} reaches a pressure, by bisection. `isValid` is null without the outside
 * diameter, else whether d <= sqrt(6 D t) (medium): false means outside the equation.
 * Refuses `pressure_unreachable` (no thickness is enough for this hole; other repair), and what {@link leakPressure} refuses.
 * @source as {@link leakPressure}.
 */
export const leakThickness = formula(
  { pressureMpa: positive('P_MPa'), ...HOLE, diameterMm: optional(positive('D_mm')) },
  ({ pressureMpa, diameterMm, ...hole }) => {
    const limitMpa = limitPressure(hole)
    if (isAtLeast(pressureMpa, limitMpa)) return refuse('pressure_unreachable')
    let [low, high] = [0, hole.holeMm]
    while (pressureAt(hole, high) < pressureMpa) [low, high] = [high, 2 * high]
    for (let step = 0; step < BISECTIONS; step += 1) {
      const middle = (low + high) / 2
      if (pressureAt(hole, middle) < pressureMpa) low = middle
      else high = middle
    }
    // The upper end: the answer itself holds the pressure.
    const thicknessMm = high
    const isValid = diameterMm === null ? null : isAtMost(hole.holeMm, Math.sqrt(6 * diameterMm * thicknessMm))
    return { thicknessMm, limitMpa, isValid }
  },
)
