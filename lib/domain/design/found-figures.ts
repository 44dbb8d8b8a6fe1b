import { compareFractions, type Fraction, toNumber } from '../decimal'
import type { RepairState } from '../fold/repair-state'
import { measuredExact } from '../judge/exact-units'
import { type Measured, showReading, showReadingUnit } from '../reading'
import type { RecordOf } from '../records/record'
import type { DesignFigure, FoundKey } from './design-figure'
import { defectInForce, designInForce, type FigureSource, sourceOf } from './recorded-basis'
import { mixRatio, timesHole } from './specified-figures'

type Defect = RecordOf<'defect'>

/** The figures as found at the pipe and as chosen on the design sheet. Of several readings the worst for the design is taken, and said. */
export function foundFigures(state: RepairState): Readonly<Record<FoundKey, DesignFigure>> {
  const found = defectInForce(state)
  const design = designInForce(state)
  const [seen, drawn] = [found ? sourceOf(found) : null, design ? sourceOf(design) : null]
  const defect = found?.record
  const figure = (symbol: string, label: string, value: Measured | undefined, from: FigureSource | null) =>
    single(symbol, label, 'mm', measuredExact(value, 'mm'), value, from)
  const holes = defect ? [defect.holeAxial, defect.holeHoop] : []
  return {
    diameter: extreme('D', 'outside diameter as found', defect?.diameters ?? [], 'greatest', seen),
    wall: figure('tw', 'wall of the pipe, nominal', defect?.nominalWall, seen),
    wallLeft: leastWall(defect, seen),
    hole: extreme('d', 'hole as found, the greater of its two sizes', holes, 'greatest', seen),
    holeAxial: figure('a', 'hole along the pipe', defect?.holeAxial, seen),
    holeHoop: figure('h', 'hole round the pipe', defect?.holeHoop, seen),
    defect: figure('Ld', 'length of the defect', defect?.defectLength, seen),
    girth: meanGirth(defect?.girths ?? [], seen),
    pressure: single(
      'P',
      'design pressure',
      'MPa',
      measuredExact(design?.record.designPressure, 'MPa'),
      design?.record.designPressure,
      drawn,
    ),
    timesHole: timesHole(state),
    chosenPlies: single(
      'n',
      'plies as chosen',
      '',
      measuredExact(design?.record.plies, 'plies'),
      design?.record.plies,
      drawn,
    ),
    chosenThickness: figure('t', 'laminate as chosen', design?.record.minThickness, drawn),
    chosenOverlap: figure('o', 'overlap as chosen', design?.record.overlapEachSide, drawn),
    chosenLength: figure('L', 'total length as chosen', design?.record.totalLength, drawn),
    fillerRatio: mixRatio(state, 'filler-mix', 'Bf', 'filler, part B to 100 of part A by mass'),
    resinRatio: mixRatio(state, 'resin-mix', 'Br', 'resin, part B to 100 of part A by mass'),
  }
}

function single(
  symbol: string,
  label: string,
  unit: string,
  exact: Fraction | null,
  value: Measured | undefined,
  from: FigureSource | null,
): DesignFigure {
  return {
    symbol,
    label,
    unit,
    value: exact ? toNumber(exact) : null,
    shown: value ? showReadingUnit(value) : null,
    note: null,
    from: value ? from : null,
  }
}

function extreme(
  symbol: string,
  label: string,
  values: readonly Measured[],
  which: 'greatest' | 'least',
  from: FigureSource | null,
): DesignFigure {
  const exact = values.flatMap((value) => {
    const one = measuredExact(value, 'mm')
    return one ? [{ value, one }] : []
  })
  const worst = exact.reduce<(typeof exact)[number] | null>((kept, each) => {
    if (kept === null) return each
    const distance = compareFractions(each.one, kept.one)
    return (which === 'greatest' ? distance > 0 : distance < 0) ? each : kept
  }, null)
  const isWhole = exact.length === values.length
  return {
    ...single(symbol, label, 'mm', isWhole && worst ? worst.one : null, worst?.value, from),
    note: values.length > 1 ? `${which} of ${values.map(showReading).join(', ')}` : null,
  }
}

/** The least wall that was read. A mark read only as below a limit may be less: then the least is not known. */
function leastWall(defect: Defect | undefined, from: FigureSource | null): DesignFigure {
  const readings = defect?.wall ?? []
  const numbers = readings.flatMap(({ reading }) => (reading.kind === 'number' ? [reading] : []))
  const below = readings.filter(({ reading }) => reading.kind === 'below')
  const unread = readings.filter(({ reading }) => reading.kind !== 'number' && reading.kind !== 'below')
  const least = extreme('ts', 'wall left, the least that was read', numbers, 'least', from)
  const where = readings.find(({ reading }) => reading.kind === 'number' && showReadingUnit(reading) === least.shown)
  return {
    ...least,
    value: below.length > 0 ? null : least.value,
    note: [
      where ? `least of ${numbers.length} readings, at ${where.mark}` : '',
      below.length > 0 ? `${below.map((one) => one.mark).join(', ')} read only as below a limit` : '',
      unread.length > 0
        ? `no number at ${unread.map((one) => `${one.mark} (${showReading(one.reading)})`).join(', ')}`
        : '',
    ]
      .filter((one) => one !== '')
      .join('; '),
  }
}

function meanGirth(girths: readonly Measured[], from: FigureSource | null): DesignFigure {
  const values = girths.map((one) => measuredExact(one, 'mm'))
  const numbers = values.flatMap((one) => (one ? [toNumber(one)] : []))
  const mean =
    numbers.length > 0 && numbers.length === girths.length
      ? numbers.reduce((sum, one) => sum + one, 0) / numbers.length
      : null
  return {
    symbol: 'g',
    label: 'girth by tape, mean',
    unit: 'mm',
    value: mean,
    shown: mean === null ? null : `${Math.round(mean * 100) / 100} mm`,
    note: girths.length > 1 ? `mean of ${girths.map(showReading).join(', ')}` : null,
    from: mean === null ? null : from,
  }
}
