import { clampBandLength } from '@/lib/calc/clamp-band'
import { laminateBondLength, laminateOverlap, laminateTotalLength } from '@/lib/calc/laminate-overlap'
import { isRefused } from '@/lib/calc/refusal'
import type { DesignChoices } from './design-figures'
import { plugVolume } from './material-formulas'
import { type DesignValues, usedStrains } from './required-laminate'

/** Overlap beyond the defect by the form that the engineer chose. Refuses `missing_form`. */
export function overlapOf(values: DesignValues, { overlapForm }: DesignChoices) {
  return laminateOverlap({
    diameterMm: values.diameter,
    wallMm: values.wall,
    form: overlapForm === 'ISO 24817' ? 'iso' : overlapForm === 'ASME PCC-2' ? 'pcc2' : null,
  })
}

/** Bond length of the laminate as chosen. */
export function bondOf(values: DesignValues) {
  return laminateBondLength({
    axialModulusMpa: values.axialModulus,
    axialStrain: usedStrains(values).axial,
    thicknessMm: values.chosenThickness,
    shearMpa: values.lapShear,
    factor: values.bondFactor,
  })
}

/** The greater of overlap and bond length: both must be there. */
export function neededOverlap(values: DesignValues, choices: DesignChoices) {
  const overlap = overlapOf(values, choices)
  if (isRefused(overlap)) return overlap
  const bond = bondOf(values)
  return isRefused(bond) ? bond : { overlapMm: Math.max(overlap.overlapMm, bond.overlapMm) }
}

/** Taper and total length from the needed overlap and the laminate as chosen. */
export function extentOf(values: DesignValues, choices: DesignChoices) {
  const overlap = neededOverlap(values, choices)
  if (isRefused(overlap)) return overlap
  return laminateTotalLength({
    defectMm: values.defect,
    overlapMm: overlap.overlapMm,
    laminateMm: values.chosenThickness,
    taperRatio: values.taperRatio,
  })
}

/** Cut length of the band from the girth by tape. Nothing of it is assumed: tail, build and thickness of the band are asked for. */
export function bandOf(values: DesignValues) {
  return clampBandLength({
    girthMm: values.girth,
    tailMm: values.tail,
    buildMm: values.build,
    bandThicknessMm: values.bandThickness,
  })
}

/** Amount of putty for the plug. */
export function plugOf(values: DesignValues) {
  return plugVolume({
    axialMm: values.holeAxial,
    hoopMm: values.holeHoop,
    wallMm: values.wall,
    times: values.timesHole,
  })
}
