import { isAtLeast, isAtMost } from '@/lib/calc/comparison'
import { isRefused, type Refusal } from '@/lib/calc/refusal'
import { wrapMinPlies } from '@/lib/calc/wrap-length'
import { toNumber } from '../decimal'
import type { RepairState } from '../fold/repair-state'
import { measuredExact } from '../judge/exact-units'
import { type Measured, showReadingUnit, type Unit } from '../reading'
import type { DesignChoices, DesignFigures } from './design-figures'
import { showComputed } from './equation'
import { defectInForce, designInForce } from './recorded-basis'
import { refusalWords } from './refusal-words'
import { extentOf, neededOverlap } from './required-extent'
import { requiredLaminate, strainOf, valuesOf } from './required-laminate'

/** One value of the design sheet against what was computed or asked. Not computed is neither of the other two. */
export type ComparedRow = {
  what: string
  needed: string
  recorded: string
  outcome: 'not less' | 'less' | 'not more' | 'more' | 'not computed'
  finding: string | null
}

type Needed = { value: number; text: string; textWhenLess?: string } | Refusal | null
type Side = 'at least' | 'at most'

/** The recorded design against the computed one: what is recorded below a computed least, or above a computed most, is a finding. Exact digits are compared. */
export function compareDesign(state: RepairState, figures: DesignFigures, choices: DesignChoices): ComparedRow[] {
  const design = designInForce(state)?.record
  if (!design) return []
  const defect = defectInForce(state)?.record
  const values = valuesOf(figures)
  const laminate = requiredLaminate(values, choices)
  const overlap = neededOverlap(values, choices)
  const extent = extentOf(values, choices)
  const strain = strainOf(values)
  const forThickness = wrapMinPlies({
    designMm: values.chosenThickness,
    plyMm: values.ply,
    atLeast: values.fewestPlies,
  })
  const millimetres = (value: number) => ({
    value,
    text: `${showComputed(value, 2)} mm`,
    // Where the recorded figure is less, the least is shown rounded up: it never reads smaller than it is.
    textWhenLess: `${showComputed(Math.ceil(value * 100 - 1e-7) / 100, 2)} mm`,
  })
  const plies = (value: number) => ({ value, text: `${value} plies` })
  const ownLength =
    values.defect === null
      ? null
      : 2 * numberIn(design.overlapEachSide, 'mm') + values.defect + 2 * numberIn(design.taper, 'mm')
  return [
    row('Plies', isRefused(laminate) ? laminate : plies(laminate.plies), design.plies, 'plies'),
    row(
      'Laminate thickness',
      isRefused(laminate) ? laminate : millimetres(laminate.thicknessMm),
      design.minThickness,
      'mm',
    ),
    row(
      'Plies for the thickness as recorded',
      isRefused(forThickness) ? forThickness : plies(forThickness.plies),
      design.plies,
      'plies',
    ),
    row(
      'Overlap each side',
      isRefused(overlap) ? overlap : millimetres(overlap.overlapMm),
      design.overlapEachSide,
      'mm',
    ),
    row('Taper each end', isRefused(extent) ? extent : millimetres(extent.taperMm), design.taper, 'mm'),
    row('Total length', isRefused(extent) ? extent : millimetres(extent.totalMm), design.totalLength, 'mm'),
    row(
      'Total length of the recorded parts',
      ownLength === null ? { refused: 'missing_defect_mm' } : millimetres(ownLength),
      design.totalLength,
      'mm',
    ),
    ...(['hoopStrain', 'axialStrain'] as const).flatMap((field) => {
      const stated = design.properties?.[field]
      if (!stated) return []
      const name = field === 'hoopStrain' ? 'Strain used round the pipe' : 'Strain used along the pipe'
      return [
        row(
          name,
          isRefused(strain) ? strain : { value: strain.eps, text: strain.eps.toFixed(5) },
          stated,
          'mm/mm',
          'at most',
        ),
      ]
    }),
    row('Design pressure against the line’s', found(defect?.designPressure, 'MPa'), design.designPressure, 'MPa'),
    row('Design temperature against the line’s', found(defect?.maxTemp, 'degC'), design.designTemp, 'degC'),
  ]
}

function numberIn(value: Measured, unit: Unit): number {
  const exact = measuredExact(value, unit)
  return exact ? toNumber(exact) : Number.NaN
}

function found(value: Measured | undefined, unit: Unit): Needed {
  return value ? { value: numberIn(value, unit), text: showReadingUnit(value) } : null
}

function row(what: string, needed: Needed, recorded: Measured, unit: Unit, side: Side = 'at least'): ComparedRow {
  const shown = showReadingUnit(recorded)
  const exact = measuredExact(recorded, unit)
  if (needed === null || 'refused' in needed || !exact) {
    const why = needed === null ? 'not recorded' : 'refused' in needed ? refusalWords(needed.refused) : 'units differ'
    return { what, needed: `not computed: ${why}`, recorded: shown, outcome: 'not computed', finding: null }
  }
  const value = toNumber(exact)
  const isMet = side === 'at least' ? isAtLeast(value, needed.value) : isAtMost(value, needed.value)
  const words = side === 'at least' ? (['not less', 'less'] as const) : (['not more', 'more'] as const)
  const text = isMet ? needed.text : (needed.textWhenLess ?? needed.text)
  return {
    what,
    needed: `${side === 'at least' ? '≥' : '≤'} ${text}`,
    recorded: shown,
    outcome: isMet ? words[0] : words[1],
    finding: isMet ? null : `${what}: recorded ${shown} is ${words[1]} than ${text}.`,
  }
}
