import { isRefused } from '@/lib/calc/refusal'
import type { RepairState } from '../fold/repair-state'
import { type ComparedRow, compareDesign } from './compare-design'
import { type DesignRevision, designRevisions } from './design-approval'
import type { DesignFigure, FigureKey } from './design-figure'
import { type DesignChoices, type DesignFigures, designChoices, designFigures } from './design-figures'
import { type EnvelopeRow, envelopeRows } from './envelope-rows'
import { type Equation, showComputed } from './equation'
import { extentEquations } from './extent-equations'
import { laminateEquations } from './laminate-equations'
import { refusalWords } from './refusal-words'
import { requiredLaminate, valuesOf } from './required-laminate'
import { type SensitivitySeries, sensitivityOf } from './sensitivity'

export type DesignSheet = {
  choices: DesignChoices
  /** The figures that the equations use, in the order of their first use. */
  inputs: readonly (DesignFigure & { key: FigureKey })[]
  equations: readonly Equation[]
  /** Which case governs, in words, or why none can be named. */
  governing: { isKnown: boolean; text: string }
  compared: readonly ComparedRow[]
  envelope: readonly EnvelopeRow[]
  sensitivity: readonly SensitivitySeries[]
  chosenPlies: number | null
  chosenBecause: string | null
  revisions: readonly DesignRevision[]
  /** Findings in sentences: recorded below computed, as found outside the envelope. */
  findings: readonly string[]
}

/** What holds for every equation of the sheet: clause numbers stand as remembered until the engineer has checked them. */
export const FORMS_TO_SETTLE =
  'Clause numbers and forms are to be settled by the engineer from the edition that the specification cites.'

/** The design sheet of a repair, computed from what is recorded: a missing input is named, never filled in. */
export function designSheet(state: RepairState): DesignSheet {
  const figures = designFigures(state)
  const choices = designChoices(state)
  const equations = [...laminateEquations(figures, choices), ...extentEquations(figures, choices)]
  const compared = compareDesign(state, figures, choices)
  const envelope = envelopeRows(state)
  return {
    choices,
    inputs: inputsOf(equations, figures, choices),
    equations,
    governing: governingOf(figures, choices),
    compared,
    envelope,
    sensitivity: sensitivityOf(figures, choices),
    chosenPlies: figures.chosenPlies.value,
    chosenBecause: state.design?.properties?.chosenBecause ?? null,
    revisions: designRevisions(state),
    findings: [
      ...compared.flatMap((one) => (one.finding ? [one.finding] : [])),
      ...envelope.flatMap((one) =>
        one.outcome === 'outside' ? [`${one.what}: as found ${one.found} is outside ${one.limit}.`] : [],
      ),
    ],
  }
}

function inputsOf(
  equations: readonly Equation[],
  figures: DesignFigures,
  choices: DesignChoices,
): DesignSheet['inputs'] {
  const strains: readonly FigureKey[] = choices.pipeCase === 'pipe stays elastic' ? [] : ['hoopStrain']
  const used = new Set<FigureKey>([...equations.flatMap((one) => one.uses), ...strains, 'axialStrain'])
  if (figures.force.value !== null) used.add('force')
  return [...used].map((key) => ({ key, ...figures[key] }))
}

function governingOf(figures: DesignFigures, choices: DesignChoices): DesignSheet['governing'] {
  const answer = requiredLaminate(valuesOf(figures), choices)
  if (isRefused(answer))
    return { isKnown: false, text: `Not computed: ${refusalWords(answer.refused)}. No case is taken to govern.` }
  const built = `${answer.plies} plies, ${showComputed(answer.builtMm, 2)} mm`
  return {
    isKnown: true,
    text:
      answer.governs === 'fewest plies'
        ? `The fewest plies govern: ${built}; the equations ask for ${showComputed(answer.thicknessMm, 2)} mm.`
        : `The laminate ${answer.governs} governs: ${showComputed(answer.thicknessMm, 2)} mm, that is ${built}.`,
  }
}
