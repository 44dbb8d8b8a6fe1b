import { isRefused } from '@/lib/calc/refusal'
import type { DesignChoices, DesignFigures } from './design-figures'
import { type Equation, equationOf, numberText, showComputed } from './equation'
import { bandOf, bondOf, extentOf, neededOverlap, overlapOf, plugOf } from './required-extent'
import { usedStrains, valuesOf } from './required-laminate'

/** The arrest for which band and plug are computed. */
export const PLUG_PLATE_BAND = 'plug, plate and band'

const mm = (symbol: string, value: number) => ({ symbol, text: `${showComputed(value, 1)} mm` })

/** Overlap, bond length, taper and total length; band and plug where the arrest has them. */
export function extentEquations(figures: DesignFigures, choices: DesignChoices): Equation[] {
  return [
    overlapEquation(figures, choices),
    bondEquation(figures),
    lengthEquation(figures, choices),
    ...(choices.arrest === PLUG_PLATE_BAND ? [bandEquation(figures), plugEquation(figures)] : []),
  ]
}

function overlapEquation(figures: DesignFigures, choices: DesignChoices): Equation {
  const answer = overlapOf(valuesOf(figures), choices)
  const isPcc = choices.overlapForm === 'ASME PCC-2'
  return equationOf(
    {
      id: 'overlap',
      title: 'Overlap beyond the defect, each side',
      form: isPcc ? 'o = 2.5·√({diameter}·{wall}/2)' : 'o = max(50, 2·√({diameter}·{wall}))',
      source: isPcc ? 'ASME PCC-2 Article 401' : 'ISO 24817',
      confidence: isPcc ? 'high' : 'medium',
      ...(isPcc ? {} : { settle: 'The ISO form is to be settled by the engineer from the edition in force.' }),
      notes: ['The wall is that of the pipe, not of the laminate.'],
    },
    figures,
    isRefused(answer) ? answer : { results: [mm('o', answer.overlapMm)] },
  )
}

function bondEquation(figures: DesignFigures): Equation {
  const values = valuesOf(figures)
  const answer = bondOf(values)
  const strain = usedStrains(values).axial
  return equationOf(
    {
      id: 'bond',
      title: 'Bond length that carries the axial load',
      form: 'l = {bondFactor}·{axialModulus}·{ea}·{chosenThickness}/{lapShear}',
      derived: { ea: { symbol: 'εa', text: strain === null ? '?' : numberText(strain) } },
      source: 'ISO 24817, ASME PCC-2',
      confidence: values.bondFactor === 1 ? 'high' : 'low',
      ...(values.bondFactor === 1
        ? {}
        : { settle: 'The factor is to be settled by the engineer: 1 is plain balance.' }),
      notes: ['t is the laminate as chosen.'],
    },
    figures,
    isRefused(answer) ? answer : { results: [mm('l', answer.overlapMm)] },
  )
}

function lengthEquation(figures: DesignFigures, choices: DesignChoices): Equation {
  const values = valuesOf(figures)
  const answer = extentOf(values, choices)
  const overlap = neededOverlap(values, choices)
  return equationOf(
    {
      id: 'length',
      title: 'Taper and total length, at the least',
      form: 'L = 2·{o} + {defect} + 2·{taperRatio}·{chosenThickness}',
      derived: { o: { symbol: 'o', text: isRefused(overlap) ? '?' : showComputed(overlap.overlapMm, 1) } },
      source: 'ISO 24817, ASME PCC-2 Article 401',
      confidence: 'medium',
      settle: 'The taper for one of thickness is to be settled by the engineer.',
      notes: ['o is the greater of overlap and bond length; t is the laminate as chosen.'],
    },
    figures,
    isRefused(answer) ? answer : { results: [mm('taper', answer.taperMm), mm('L', answer.totalMm)] },
  )
}

function bandEquation(figures: DesignFigures): Equation {
  const answer = bandOf(valuesOf(figures))
  return equationOf(
    {
      id: 'band',
      title: 'Band for the arrest, cut length',
      form: 'lb = {girth} + 2π·({build} + {bandThickness}/2) + {tail}',
      source: 'Geometry',
      confidence: 'high',
      notes: ['One turn of the band; the girth is measured, never computed from the diameter.'],
    },
    figures,
    isRefused(answer) ? answer : { results: [mm('lb', answer.lengthMm)] },
  )
}

function plugEquation(figures: DesignFigures): Equation {
  const answer = plugOf(valuesOf(figures))
  return equationOf(
    {
      id: 'plug',
      title: 'Putty for the plug, at the least',
      form: 'V = {timesHole}·π/4·{holeAxial}·{holeHoop}·{wall}',
      source: 'Geometry; the factor is the specification’s',
      confidence: 'high',
    },
    figures,
    isRefused(answer) ? answer : { results: [{ symbol: 'V', text: `${showComputed(answer.volumeMm3, 1)} mm³` }] },
  )
}
