import { allowableStrain, laminateByStrain, laminateByStress, laminateWithoutPipe } from '@/lib/calc/laminate-design'
import { isRefused, type Refusal, refuse } from '@/lib/calc/refusal'
import { leakThickness } from '@/lib/calc/through-wall-leak'
import { wrapMinPlies } from '@/lib/calc/wrap-length'
import type { FigureKey } from './design-figure'
import type { DesignChoices, DesignFigures } from './design-figures'

/** The numbers of the figures in the units of the equations; null is not known. */
export type DesignValues = Readonly<Record<FigureKey, number | null>>

export type LaminateCase = 'round the pipe' | 'along the pipe' | 'over the hole' | 'fewest plies'
export type RequiredLaminate = { plies: number; thicknessMm: number; builtMm: number; governs: LaminateCase }

/** The numbers of the figures. */
export function valuesOf(figures: DesignFigures): DesignValues {
  return Object.fromEntries(Object.entries(figures).map(([key, one]) => [key, one.value])) as DesignValues
}

/** Allowable strain from the standard's table value, the temperature factor and the difference of expansion. */
export function strainOf(values: DesignValues): { eps: number } | Refusal {
  const perKelvin = (millionths: number | null): number | null => (millionths === null ? null : millionths * 1e-6)
  return allowableStrain({
    base: values.baseStrain,
    temperatureFactor: values.temperatureFactor,
    temperatureRiseK: values.temperatureRise,
    pipeExpansionPerK: perKelvin(values.pipeExpansion),
    laminateExpansionPerK: perKelvin(values.laminateExpansion),
  })
}

/** The strains that the design uses: as stated, otherwise as computed; not known when neither is there. */
export function usedStrains(values: DesignValues): { hoop: number | null; axial: number | null } {
  const computed = strainOf(values)
  const eps = isRefused(computed) ? null : computed.eps
  return { hoop: values.hoopStrain ?? eps, axial: values.axialStrain ?? eps }
}

/** Laminate thickness round and along the pipe by the case that the engineer chose. Refuses `missing_pipe_case` and what the formula refuses. */
export function laminateOf(values: DesignValues, choices: DesignChoices) {
  const strains = usedStrains(values)
  const shared = {
    diameterMm: values.diameter,
    pressureMpa: values.pressure,
    hoopModulusMpa: values.hoopModulus,
    axialModulusMpa: values.axialModulus,
    forceN: values.force,
  }
  const strained = { ...shared, hoopStrain: strains.hoop, axialStrain: strains.axial }
  switch (choices.pipeCase) {
    case 'pipe stays elastic':
      return laminateByStress({
        ...shared,
        pipeStressMpa: values.pipeStress,
        pipePressureMpa: values.pipePressure,
        pipeModulusMpa: values.pipeModulus,
      })
    case 'pipe may yield':
      return laminateByStrain({
        ...strained,
        pipeStressMpa: values.pipeStress,
        wallLeftMm: values.wallLeft,
        liveMpa: values.live,
        pipeModulusMpa: values.pipeModulus,
      })
    case 'no help from the pipe':
      return laminateWithoutPipe({ ...strained, poissonRatio: values.poisson })
    default:
      return refuse('missing_pipe_case')
  }
}

/** Laminate thickness over the hole; null when the wall is not through. Refuses `missing_defect_kind` and what the formula refuses. */
export function overHole(values: DesignValues, choices: DesignChoices) {
  if (choices.isThroughWall === null) return refuse('missing_defect_kind')
  if (!choices.isThroughWall) return null
  return leakThickness({ pressureMpa: values.pressure, diameterMm: values.diameter, ...holeOf(values) })
}

/** What both forms of the through-wall equation need of the hole. */
export function holeOf(values: DesignValues) {
  return {
    holeMm: values.hole,
    serviceFactor: values.serviceFactor,
    toughnessJm2: values.toughness,
    poissonRatio: values.poisson,
    hoopModulusMpa: values.hoopModulus,
    axialModulusMpa: values.axialModulus,
    shearModulusMpa: values.shearModulus,
  }
}

/**
 * The greatest of the thicknesses that apply, and the whole plies that reach it. One case that could not be computed leaves the answer open: its refusal
 * is the answer, and the rest is not taken for the whole.
 */
export function requiredLaminate(values: DesignValues, choices: DesignChoices): RequiredLaminate | Refusal {
  const wall = laminateOf(values, choices)
  if (isRefused(wall)) return wall
  const hole = overHole(values, choices)
  if (isRefused(hole)) return hole
  const cases: { governs: LaminateCase; mm: number }[] = [
    { governs: 'round the pipe', mm: wall.hoopMm },
    { governs: 'along the pipe', mm: wall.axialMm },
    ...(hole ? [{ governs: 'over the hole' as const, mm: hole.thicknessMm }] : []),
  ]
  const thickest = cases.reduce((most, one) => (one.mm > most.mm ? one : most))
  const plies = wrapMinPlies({ designMm: thickest.mm, plyMm: values.ply, atLeast: values.fewestPlies })
  if (isRefused(plies)) return plies
  const unbounded = wrapMinPlies({ designMm: thickest.mm, plyMm: values.ply, atLeast: 1 })
  const isFewest = !isRefused(unbounded) && unbounded.plies < plies.plies
  return {
    plies: plies.plies,
    thicknessMm: thickest.mm,
    builtMm: plies.thicknessMm,
    governs: isFewest ? 'fewest plies' : thickest.governs,
  }
}
