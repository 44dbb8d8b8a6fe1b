import type { RepairState } from '../fold/repair-state'
import { measured, parseReading, type Unit } from '../reading'
import type { DesignFigure, FigureKey } from './design-figure'
import { type DesignChoices, type DesignFigures, designChoices, designFigures, figureOf } from './design-figures'
import { type Equation, showComputed } from './equation'
import { extentEquations, PLUG_PLATE_BAND } from './extent-equations'
import { fabricEquations, fabricNeed } from './fabric-quantities'
import { fillerEquations, fillerNeed } from './filler-quantities'
import { type Need, needOf } from './need'
import { PROPERTY_ROWS, type PropertyKey } from './property-rows'
import { bandOf, plugOf } from './required-extent'
import { valuesOf } from './required-laminate'
import { tapeEquations, tapeNeed } from './tape-quantities'
import { type UsedPart, usedQuantities } from './used-quantities'

export type QuantityLine = {
  what: string
  needed: string | null
  /** Why it is not computed. */
  refusal: string | null
  used: string
  difference: string | null
}

export type QuantitySheet = {
  choices: DesignChoices
  lines: readonly QuantityLine[]
  equations: readonly Equation[]
  inputs: readonly (DesignFigure & { key: FigureKey })[]
  /** Values that the record does not state: the page asks for them and keeps them nowhere. */
  asked: readonly {
    key: PropertyKey
    label: string
    symbol: string
    unit: Unit | null
    text: string
    isRead: boolean
  }[]
}

/** Values typed on the page by name, as text. What the record states is never replaced by them. */
export type AskedTexts = Readonly<Partial<Record<string, string>>>

const FILLER: readonly PropertyKey[] = [
  'fillerLength',
  'fillerGirth',
  'fillerThickness',
  'fillerDensity',
  'fillerSpare',
]
const WET: readonly PropertyKey[] = ['ply', 'fabricWaste', 'resinPerPly', 'resinSpare']
const TAPE: readonly PropertyKey[] = ['ply', 'tapeWidth', 'tapePitch', 'endTurns', 'rollLength', 'tapeWaste']
const BAND: readonly PropertyKey[] = ['tail', 'build', 'bandThickness']

/** What to draw from stores for a repair, and what was used so far. Every figure comes from the record, the specification or the asked texts. */
export function quantitySheet(state: RepairState, askedTexts: AskedTexts): QuantitySheet {
  const choices = designChoices(state)
  const stated = designFigures(state)
  const isTape = choices.wrap === 'water-activated tape'
  const keys = [...(choices.arrest === PLUG_PLATE_BAND ? BAND : []), ...FILLER, ...(isTape ? TAPE : WET)]
  const missing = keys.filter((key) => stated[key].value === null)
  const asked = missing.map((key) => askedFigure(key, askedTexts[key] ?? ''))
  const figures: DesignFigures = {
    ...stated,
    ...Object.fromEntries(asked.flatMap(({ key, figure }) => (figure ? [[key, figure]] : []))),
  }
  const plug = extentEquations(figures, choices).filter((one) => one.id === 'band' || one.id === 'plug')
  const equations = [
    ...plug,
    ...fillerEquations(figures),
    ...(isTape ? tapeEquations(figures) : fabricEquations(figures)),
  ]
  const used = [...new Set(equations.flatMap((one) => one.uses))]
  return {
    choices,
    lines: linesOf(state, figures, choices, isTape),
    equations,
    inputs: used.map((key) => ({ key, ...figures[key] })),
    asked: asked.map(({ key, label, symbol, unit, text, figure }) => ({
      key,
      label,
      symbol,
      unit,
      text,
      isRead: text === '' || figure !== null,
    })),
  }
}

function askedFigure(key: PropertyKey, text: string) {
  const row = PROPERTY_ROWS.find(([name]) => name === key)
  const [, , symbol, label, unit] = row ?? [key, key, key, key, 'ratio' as const]
  const typedIn: Unit = key === 'rollLength' ? 'm' : unit
  const reading = text.trim() === '' ? null : parseReading(text, typedIn)
  const figure =
    reading?.kind === 'number' ? figureOf(symbol, label, unit, measured(text.trim(), typedIn), { kind: 'asked' }) : null
  return { key, label, symbol, unit: typedIn === 'ratio' ? null : typedIn, text: text.trim(), figure }
}

type Used = { value: number | null; text: string }

function linesOf(state: RepairState, figures: DesignFigures, choices: DesignChoices, isTape: boolean): QuantityLine[] {
  const used = usedQuantities(state)
  const values = valuesOf(figures)
  const filler = fillerNeed(figures)
  const tape = tapeNeed(figures)
  const fabric = fabricNeed(figures)
  const band = bandOf(values)
  const plug = plugOf(values)
  const attempts = used.attempts > 1 ? `, in ${used.attempts} attempts` : ''
  const amount = (value: number | null, unit: string): Used => ({
    value,
    text: value === null ? 'nothing recorded' : `${showComputed(value, 0)} ${unit}`,
  })
  return [
    ...(choices.arrest === PLUG_PLATE_BAND
      ? [
          line(
            'Band, cut length',
            needOf(band, (one) => one.lengthMm, 'mm', 1),
            amount(used.bandMm, 'mm'),
            'mm',
          ),
          line(
            'Putty, at the least',
            needOf(plug, (one) => one.volumeMm3, 'mm³', 1),
            amount(used.puttyMm3, 'mm³'),
            'mm³',
          ),
        ]
      : []),
    line('Filler, part A', filler.partA, mixed(used.fillerA, attempts), 'g'),
    line('Filler, part B', filler.partB, mixed(used.fillerB, attempts), 'g'),
    ...(isTape
      ? [
          line(
            'Tape, rolls',
            tape.rolls,
            {
              value: used.rolls === 0 ? null : used.rolls,
              text: used.rolls === 0 ? 'nothing recorded' : `${used.rolls} rolls`,
            },
            'rolls',
          ),
          line('Tape, length', tape.run, { value: null, text: 'by the roll, not measured' }, 'm'),
        ]
      : [
          line(
            'Fabric, length at full width',
            fabric.run,
            { value: null, text: used.plies === 0 ? 'nothing recorded' : `${used.plies} plies laid, not measured` },
            'm',
          ),
          line('Laminating resin, part A', fabric.partA, mixed(used.resinA, attempts), 'g'),
          line('Hardener, part B', fabric.partB, mixed(used.resinB, attempts), 'g'),
        ]),
  ]
}

function mixed(part: UsedPart, attempts: string): Used {
  if (part.mixes === 0) return { value: null, text: 'nothing recorded' }
  const weighed = part.mixes - part.unweighed
  const words = [
    weighed > 0 ? `${showComputed(part.massG, 0)} g in ${weighed} ${weighed === 1 ? 'mix' : 'mixes'}${attempts}` : '',
    part.unweighed > 0 ? `${part.unweighed} not weighed` : '',
    part.scrappedG > 0 ? `of it ${showComputed(part.scrappedG, 0)} g scrapped` : '',
  ].filter((one) => one !== '')
  return { value: weighed > 0 && part.unweighed === 0 ? part.massG : null, text: words.join('; ') }
}

function line(what: string, need: Need, used: Used, unit: string): QuantityLine {
  if ('refusal' in need) return { what, needed: null, refusal: need.refusal, used: used.text, difference: null }
  return {
    what,
    needed: need.text,
    refusal: null,
    used: used.text,
    difference: used.value === null ? null : differenceText(used.value - need.value, need.value, unit),
  }
}

function differenceText(difference: number, needed: number, unit: string): string {
  const places = unit === 'mm' || unit === 'mm³' ? 1 : 0
  const share = Math.round((Math.abs(difference) / needed) * 100)
  if (Number(Math.abs(difference).toFixed(places)) === 0) return 'as computed'
  return `${showComputed(Math.abs(difference), places)} ${unit} ${difference > 0 ? 'more' : 'less'}${share === 0 ? '' : ` (${share} %)`}`
}
