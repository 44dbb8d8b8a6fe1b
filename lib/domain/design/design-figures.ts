import { toNumber } from '../decimal'
import type { RepairState } from '../fold/repair-state'
import { measuredExact } from '../judge/exact-units'
import { type Measured, showReadingUnit, showUnit, type Unit } from '../reading'
import type { RecordOf } from '../records/record'
import type { DesignFigure, FigureKey } from './design-figure'
import { foundFigures } from './found-figures'
import { PROPERTY_ROWS, type PropertyKey } from './property-rows'
import { defectInForce, designInForce, type FigureSource, sourceOf } from './recorded-basis'

export type DesignFigures = Readonly<Record<FigureKey, DesignFigure>>

/** What is not a number: how the pipe is counted, the form of the overlap, whether the wall is through, and how the leak is arrested. */
export type DesignChoices = {
  edition: string | null
  pipeCase: NonNullable<RecordOf<'design'>['properties']>['pipeCase'] | null
  overlapForm: NonNullable<RecordOf<'design'>['properties']>['overlapForm'] | null
  isThroughWall: boolean | null
  arrest: string
  wrap: string
}

/** Every figure of the design computation, from the defect as found, the design sheet in force and the specification. */
export function designFigures(state: RepairState): DesignFigures {
  const design = designInForce(state)
  const properties = design?.record.properties
  const quantities = design?.record.quantities
  const from = design ? sourceOf(design) : null
  const own = Object.fromEntries(
    PROPERTY_ROWS.map(([key, field, symbol, label, unit]): [PropertyKey, DesignFigure] => {
      const value = { ...properties, ...quantities }[field]
      return [key, figureOf(symbol, label, unit, typeof value === 'object' ? value : undefined, from)]
    }),
  ) as Record<PropertyKey, DesignFigure>
  return { ...foundFigures(state), ...own }
}

/** The choices of the design sheet in force, the kind of defect and the arrest that the repair was opened with. */
export function designChoices(state: RepairState): DesignChoices {
  const properties = designInForce(state)?.record.properties
  const defect = defectInForce(state)
  return {
    edition: properties?.edition ?? null,
    pipeCase: properties?.pipeCase ?? null,
    overlapForm: properties?.overlapForm ?? null,
    isThroughWall: defect ? defect.record.defectKind === 'through-wall' : null,
    arrest: state.opened.body.arrest,
    wrap: state.opened.body.wrap,
  }
}

/** A figure from a measured value, converted exactly to the equation's unit; without a value or a factor between the units it is not known. */
export function figureOf(
  symbol: string,
  label: string,
  unit: Unit,
  value: Measured | undefined,
  from: FigureSource | null,
  note: string | null = null,
): DesignFigure {
  const exact = measuredExact(value, unit)
  return {
    symbol,
    label,
    unit: unit === 'ratio' ? '' : showUnit(unit),
    value: exact ? toNumber(exact) : null,
    shown: value ? showReadingUnit(value).replace(/ ratio$/, '') : null,
    note: value && !exact ? 'its unit does not fit the equation' : note,
    from: value ? from : null,
  }
}
