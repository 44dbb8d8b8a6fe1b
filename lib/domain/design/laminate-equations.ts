import { isRefused } from '@/lib/calc/refusal'
import { leakPressure } from '@/lib/calc/through-wall-leak'
import type { DesignChoices, DesignFigures } from './design-figures'
import { type Draft, type Equation, equationOf, numberText, showComputed } from './equation'
import { holeOf, laminateOf, overHole, requiredLaminate, strainOf, usedStrains, valuesOf } from './required-laminate'

const DESIGN_SOURCE = 'ISO 24817, about 7.5; ASME PCC-2 Article 401, about 3.4'
const MM = 2

/** Allowed strain, laminate thickness by the chosen case, thickness over the hole, and the plies. */
export function laminateEquations(figures: DesignFigures, choices: DesignChoices): Equation[] {
  const hole = holeEquation(figures, choices)
  return [
    strainEquation(figures),
    wallEquation(figures, choices),
    ...(hole ? [hole] : []),
    pliesEquation(figures, choices),
  ]
}

function strainEquation(figures: DesignFigures): Equation {
  const answer = strainOf(valuesOf(figures))
  return equationOf(
    {
      id: 'strain',
      title: 'Allowed strain',
      form: 'ε = {temperatureFactor}·{baseStrain} − |{temperatureRise}·({pipeExpansion} − {laminateExpansion})·10⁻⁶|',
      source: 'ISO 24817, about 7.5; the table values are the standard’s',
      confidence: 'medium',
      settle: 'Temperature factor and table strain are to be settled by the engineer from the standard.',
    },
    figures,
    isRefused(answer) ? answer : { results: [{ symbol: 'ε', text: answer.eps.toFixed(5) }] },
  )
}

function wallEquation(figures: DesignFigures, choices: DesignChoices): Equation {
  const values = valuesOf(figures)
  const answer = laminateOf(values, choices)
  const strains = usedStrains(values)
  const strain = (symbol: string, value: number | null) => ({
    symbol,
    text: value === null ? '?' : numberText(value),
  })
  const load =
    values.force === null
      ? {
          symbol: 'N',
          text:
            values.pressure === null || values.diameter === null
              ? '?'
              : showComputed((values.pressure * values.diameter) / 4, 3),
        }
      : {
          symbol: 'N',
          text: values.diameter === null ? '?' : showComputed(values.force / (Math.PI * values.diameter), 3),
        }
  const derived = { N: load, ec: strain('εc', strains.hoop), ea: strain('εa', strains.axial) }
  const notes = [
    values.force === null
      ? 'N = P·D/4, the load of a closed end: no other axial force is stated.'
      : 'N = F/(π·D), from the axial force stated.',
    ...(!isRefused(answer) && Math.min(answer.hoopMm, answer.axialMm) === 0
      ? ['A result at or below zero says that the pipe alone is enough by that equation; the fewest plies still hold.']
      : []),
  ]
  return equationOf(
    { ...WALL_FORMS[choices.pipeCase ?? 'none'], derived, notes },
    figures,
    isRefused(answer)
      ? answer
      : {
          results: [
            { symbol: 't round', text: `${showComputed(answer.hoopMm, MM)} mm` },
            { symbol: 't along', text: `${showComputed(answer.axialMm, MM)} mm` },
          ],
        },
  )
}

const WALL_FORMS: Record<NonNullable<DesignChoices['pipeCase']> | 'none', Draft> = {
  'pipe stays elastic': {
    id: 'laminate',
    title: 'Laminate, pipe stays elastic',
    form: 't round = {diameter}/(2·{pipeStress})·({pipeModulus}/{hoopModulus})·({pressure} − {pipePressure});\nt along = {diameter}/(2·{pipeStress})·({pipeModulus}/{axialModulus})·(2·{N}/{diameter} − {pipePressure})',
    source: DESIGN_SOURCE,
    confidence: 'medium',
    settle: 'Round the pipe high, along the pipe medium.',
  },
  'pipe may yield': {
    id: 'laminate',
    title: 'Laminate, pipe may yield',
    form: 't round = ({pressure}·{diameter}/2 − {pipeStress}·{wallLeft})/({ec}·{hoopModulus}), with {live} MPa in the pipe during application;\nt along = ({N} − {pipeStress}·{wallLeft})/({ea}·{axialModulus})',
    source: DESIGN_SOURCE,
    confidence: 'medium',
    settle:
      'Round the pipe high without pressure during application; with it the root of εc = (P·D/2 − s·ts)/(Ec·t) − Plive·D/(2·(Ec·t + Es·ts)) is medium.',
  },
  'no help from the pipe': {
    id: 'laminate',
    title: 'Laminate, no help from the pipe',
    form: 't round = ({pressure}·{diameter}/2 − {poisson}·{N})/({hoopModulus}·{ec});\nt along = ({N}/{axialModulus} − {poisson}·{pressure}·{diameter}/(2·{hoopModulus}))/{ea}',
    source: DESIGN_SOURCE,
    confidence: 'medium',
    settle: 'By reciprocity the formula may be printed with other subscripts of Poisson’s ratio.',
  },
  none: {
    id: 'laminate',
    title: 'Laminate',
    form: 'by the case that the engineer chooses',
    source: DESIGN_SOURCE,
    confidence: 'medium',
    settle: 'The engineer chooses how the pipe is counted.',
  },
}

function holeEquation(figures: DesignFigures, choices: DesignChoices): Equation | null {
  const values = valuesOf(figures)
  const answer = overHole(values, choices)
  if (answer === null) return null
  const held = leakPressure({ thicknessMm: values.chosenThickness, ...holeOf(values) })
  const modulus =
    values.hoopModulus !== null && values.axialModulus !== null
      ? showComputed(Math.sqrt(values.hoopModulus * values.axialModulus), 0)
      : '?'
  const notes = [
    'Eac = √(Ec·Ea); solved for t by bisection; the hole is taken as round, of the greater of its two sizes.',
    ...(!isRefused(answer) && answer.isValid === false
      ? ['The hole is greater than √(6·D·t): this is outside the equation.']
      : []),
    ...(isRefused(held)
      ? []
      : [
          `The laminate as chosen, ${figures.chosenThickness.shown ?? ''}, holds ${showComputed(held.pressureMpa, 2)} MPa over this hole; no thickness holds more than ${showComputed(held.limitMpa, 2)} MPa.`,
        ]),
  ]
  return equationOf(
    {
      id: 'hole',
      title: 'Laminate over the hole',
      form: '{pressure} = {serviceFactor}·√(0.001·{toughness}/((1 − {poisson}²)/{eac}·(3·{hole}⁴/(512·t³) + {hole}/π) + 3·{hole}²/(64·{shearModulus}·t)))',
      derived: { eac: { symbol: 'Eac', text: modulus } },
      source: DESIGN_SOURCE,
      confidence: 'medium',
      settle: 'Form high, Eac medium, the limit √(6·D·t) medium.',
      notes,
    },
    figures,
    isRefused(answer)
      ? answer
      : { results: [{ symbol: 't hole', text: `${showComputed(answer.thicknessMm, MM)} mm` }] },
  )
}

function pliesEquation(figures: DesignFigures, choices: DesignChoices): Equation {
  const answer = requiredLaminate(valuesOf(figures), choices)
  const t = { symbol: 't', text: isRefused(answer) ? '?' : showComputed(answer.thicknessMm, MM) }
  return equationOf(
    {
      id: 'plies',
      title: 'Plies',
      form: 'n = max({fewestPlies}, ⌈{t}/{ply}⌉)',
      derived: { t },
      source: 'Geometry; the fewest plies are the engineer’s',
      confidence: 'high',
      notes: ['t is the greatest of the thicknesses above; the quotient is rounded up to whole plies.'],
    },
    figures,
    isRefused(answer)
      ? answer
      : {
          results: [
            { symbol: 'n', text: `${answer.plies} plies` },
            { symbol: 'n·tply', text: `${showComputed(answer.builtMm, MM)} mm` },
          ],
        },
  )
}
