import { defaulted, factorUpToOne, notNegative, number, optional, poisson, positive, strain } from '@/lib/calc/argument'
import { isAbove } from '@/lib/calc/comparison'
import { formula } from '@/lib/calc/formula'
import { refuse } from '@/lib/calc/refusal'

interface LaminateThickness {
  readonly hoopMm: number
  readonly axialMm: number
  readonly governsMm: number
}

/** A negative thickness means that the pipe alone is enough by that equation: 0, yet the minimum ply count still holds. */
function needed(hoopMm: number, axialMm: number): LaminateThickness {
  const [hoop, axial] = [Math.max(0, hoopMm), Math.max(0, axialMm)]
  return { hoopMm: hoop, axialMm: axial, governsMm: Math.max(hoop, axial) }
}

/** Axial load per girth in N/mm: F/(pi D), or P D/4 for a closed end. */
function axialLoadPerMm(pressureMpa: number, diameterMm: number, forceN: number | null): number {
  return forceN === null ? (pressureMpa * diameterMm) / 4 : forceN / (Math.PI * diameterMm)
}

/**
 * Laminate thickness when the pipe stays elastic (mm, MPa, N): hoop t = D/(2 s) (Es/Ec) (P - Ps); axial
 * t = D/(2 s) (Es/Ea) (2F/(pi D²) - Ps), closed end F = pi D² P/4. Ps is the pressure the thinned pipe may carry.
 * Not a substitute for an engineer's design. Refuses every missing value by name, such as `missing_Ec_MPa`.
 * @source ISO 24817 about 7.5; ASME PCC-2 Article 401 about 3.4. Hoop high, axial medium.
 */
export const laminateByStress = formula(
  {
    diameterMm: positive('D_mm'),
    pipeStressMpa: positive('s_MPa'),
    pressureMpa: notNegative('P_MPa'),
    pipePressureMpa: notNegative('Ps_MPa'),
    forceN: optional(notNegative('F_N')),
    pipeModulusMpa: positive('Es_MPa'),
    hoopModulusMpa: positive('Ec_MPa'),
    axialModulusMpa: positive('Ea_MPa'),
  },
  (d) => {
    const lever = (d.diameterMm / (2 * d.pipeStressMpa)) * d.pipeModulusMpa
    const axialMpa = (2 * axialLoadPerMm(d.pressureMpa, d.diameterMm, d.forceN)) / d.diameterMm
    return needed(
      (lever / d.hoopModulusMpa) * (d.pressureMpa - d.pipePressureMpa),
      (lever / d.axialModulusMpa) * (axialMpa - d.pipePressureMpa),
    )
  },
)

/**
 * Laminate thickness when the pipe may yield at s (mm, MPa, N, strains as fractions), ts the wall left. Without live pressure:
 * hoop t = (P D/2 - s ts)/(eps_c Ec). With it: eps_c = (P D/2 - s ts)/(Ec t) - live D/(2 (Ec t + Es ts)), positive root
 * (medium). Axial t = (N - s ts)/(eps_a Ea), N = P D/4 or F/(pi D) (medium).
 * Refuses `missing_ts_mm`, `strain_not_a_fraction`, `live_above_design`, `missing_Es_MPa` with live pressure.
 * @source ISO 24817 about 7.5; ASME PCC-2 Article 401 about 3.4. Hoop high.
 */
export const laminateByStrain = formula(
  {
    diameterMm: positive('D_mm'),
    pipeStressMpa: positive('s_MPa'),
    wallLeftMm: notNegative('ts_mm'),
    pressureMpa: notNegative('P_MPa'),
    hoopModulusMpa: positive('Ec_MPa'),
    axialModulusMpa: positive('Ea_MPa'),
    hoopStrain: strain('eps_c'),
    axialStrain: strain('eps_a'),
    forceN: optional(notNegative('F_N')),
    liveMpa: defaulted(notNegative('live_MPa'), 0),
    pipeModulusMpa: optional(positive('Es_MPa')),
  },
  (d) => {
    if (isAbove(d.liveMpa, d.pressureMpa)) return refuse('live_above_design')
    if (d.liveMpa > 0 && d.pipeModulusMpa === null) return refuse('missing_Es_MPa')
    const pipeCarries = d.pipeStressMpa * d.wallLeftMm
    const hoopLoad = (d.pressureMpa * d.diameterMm) / 2 - pipeCarries
    const axialLoad = axialLoadPerMm(d.pressureMpa, d.diameterMm, d.forceN) - pipeCarries
    const stiffness =
      d.liveMpa === 0 || d.pipeModulusMpa === null
        ? hoopLoad / d.hoopStrain
        : liveStiffness(d.hoopStrain, hoopLoad, (d.liveMpa * d.diameterMm) / 2, d.pipeModulusMpa * d.wallLeftMm)
    return needed(stiffness / d.hoopModulusMpa, axialLoad / (d.axialStrain * d.axialModulusMpa))
  },
)

/** Root y = Ec t, N/mm, of eps = load/y - live/(y + pipe), for a load above zero; 0 when the pipe carries the load alone. */
function liveStiffness(eps: number, load: number, live: number, pipe: number): number {
  if (load <= 0) return 0
  const b = eps * pipe - load + live
  return (Math.sqrt(b * b + 4 * eps * load * pipe) - b) / (2 * eps)
}

/**
 * Laminate thickness without help from the pipe (mm, MPa, N): hoop t = (P D/(2 Ec) - nu N/Ec)/eps_c; axial
 * t = (N/Ea - nu P D/(2 Ec))/eps_a. With nu_ca/Ec = nu_ac/Ea the same formula may be printed with other subscripts: settle from
 * the standard. Refuses `strain_not_a_fraction` and missing values by name.
 * @source ISO 24817 about 7.5; ASME PCC-2 Article 401 about 3.4. Medium.
 */
export const laminateWithoutPipe = formula(
  {
    diameterMm: positive('D_mm'),
    pressureMpa: notNegative('P_MPa'),
    hoopModulusMpa: positive('Ec_MPa'),
    axialModulusMpa: positive('Ea_MPa'),
    hoopStrain: strain('eps_c'),
    axialStrain: strain('eps_a'),
    poissonRatio: poisson('nu_ca'),
    forceN: optional(notNegative('F_N')),
  },
  (d) => {
    const hoopLoad = (d.pressureMpa * d.diameterMm) / 2
    const axialLoad = axialLoadPerMm(d.pressureMpa, d.diameterMm, d.forceN)
    return needed(
      (hoopLoad - d.poissonRatio * axialLoad) / (d.hoopModulusMpa * d.hoopStrain),
      (axialLoad / d.axialModulusMpa - (d.poissonRatio * hoopLoad) / d.hoopModulusMpa) / d.axialStrain,
    )
  },
)

/**
 * Allowable strain, a fraction: eps = f_T eps_0 - |dT (a_pipe - a_lam)|; f_T and eps_0 come from the standard's tables.
 * Refuses `no_strain_left` at or below zero, `strain_not_a_fraction`, `f_T_above_one`. @source ISO 24817 about 7.5. Medium.
 */
export const allowableStrain = formula(
  {
    base: strain('base'),
    temperatureFactor: factorUpToOne('f_T'),
    temperatureRiseK: number('dT_K'),
    pipeExpansionPerK: number('alpha_pipe'),
    laminateExpansionPerK: number('alpha_lam'),
  },
  ({ base, temperatureFactor, temperatureRiseK, pipeExpansionPerK, laminateExpansionPerK }) => {
    const ownStrain = temperatureFactor * base
    const thermalStrain = Math.abs(temperatureRiseK * (pipeExpansionPerK - laminateExpansionPerK))
    return isAbove(ownStrain, thermalStrain) ? { eps: ownStrain - thermalStrain } : refuse('no_strain_left')
  },
)
