import { fractionOf, plusFraction, showFraction, toNumber } from '../decimal'
import type { AttemptState, RepairState } from '../fold/repair-state'
import { type Measured, type Reading, showReading } from '../reading'
import type { RecordOf } from '../records/record'
import { latestRecord, recordsOf } from './latest-record'

/** A reading on the leak's clock row, millimetres from the leak along the pipe; `mm` is null where the reading is no number. */
export type RowReading = { xMm: number; mm: number | null; text: string }

/** What the section is drawn from: the repair's own numbers in millimetres. Null where nothing is recorded. For drawing only, never for a verdict. */
export type SectionNumbers = {
  wallMm: number | null
  holeMm: number | null
  defectMm: number | null
  isLossOutside: boolean
  wall: RowReading[]
  arrest: { record: RecordOf<'arrest'>; attempt: AttemptState } | null
  watchText: string | null
  filler: { attempt: AttemptState; beforeMm: RowReading[]; afterMm: RowReading[]; overHoleText: string | null } | null
  wrap: {
    attempt: AttemptState | null
    plies: number | null
    thicknessMm: number | null
    row: RowReading[]
    text: string
  } | null
  totalMm: number | null
  taperLeftMm: number | null
  taperRightMm: number | null
  overlapMm: number | null
  offsetMm: number
  isAsBuilt: boolean
}

/** Millimetres of a length, for drawing. */
export function drawnMm(length: Measured): number {
  return toNumber(length) * (length.unit === 'in' ? 25.4 : 1)
}

/** Gather the section's numbers from the repair: latest record of each kind, on the leak's clock row. */
export function sectionNumbers(state: RepairState): SectionNumbers {
  const { defect, design } = state
  const built = latestRecord(state, 'visual')?.record ?? null
  const arrest = latestRecord(state, 'arrest')
  return {
    wallMm: defect ? drawnMm(defect.nominalWall) : design ? drawnMm(design.designWall) : null,
    holeMm: defect ? drawnMm(defect.holeAxial) : null,
    defectMm: defect ? drawnMm(defect.defectLength) : null,
    isLossOutside:
      defect?.cause === 'external corrosion' || defect?.cause === 'mechanical damage' || defect?.cause === 'unknown',
    wall: defect ? rowOf(defect.grid, defect.clock, defect.wall) : [],
    arrest,
    watchText: watchText(state),
    filler: fillerNumbers(state),
    wrap: wrapNumbers(state),
    totalMm: built ? drawnMm(built.totalLength) : design ? drawnMm(design.totalLength) : null,
    taperLeftMm: built ? drawnMm(built.taperLeft) : design ? drawnMm(design.taper) : null,
    taperRightMm: built ? drawnMm(built.taperRight) : design ? drawnMm(design.taper) : null,
    overlapMm: design ? drawnMm(design.overlapEachSide) : null,
    offsetMm: built?.offset ? drawnMm(built.offset) : 0,
    isAsBuilt: built !== null,
  }
}

type MarkedList = RecordOf<'hardness'>['readings']

/** Readings of a grid on one clock row, by station. Clock positions are compared as written. */
export function rowOf(grid: RecordOf<'hardness'>['grid'], clock: string, readings: MarkedList): RowReading[] {
  const byMark = new Map(readings.map((one) => [one.mark, one.reading]))
  return grid.stations
    .flatMap((station) => {
      const reading = byMark.get(`${station.name}-${clock}`)
      return reading ? [rowReading(drawnMm(station.fromLeak), reading)] : []
    })
    .sort((a, b) => a.xMm - b.xMm)
}

function rowReading(xMm: number, reading: Reading): RowReading {
  return { xMm, mm: reading.kind === 'number' ? drawnMm(reading) : null, text: showReading(reading) }
}

function watchText(state: RepairState): string | null {
  const watch = latestRecord(state, 'arrest-watch')?.record
  if (!watch?.endedAt) return null
  const minutes = Math.round((Date.parse(watch.endedAt) - Date.parse(watch.startedAt)) / 60_000)
  return watch.dripSeenAt ? 'drip seen' : watch.wipeDry === 'yes' ? `dry ${minutes} min` : `watched ${minutes} min`
}

/** Filler marks are `row@clock`, the row in mm from the hole. */
function fillerNumbers(state: RepairState): SectionNumbers['filler'] {
  const found = latestRecord(state, 'filler-thickness')
  if (!found) {
    const mix = latestRecord(state, 'filler-mix')
    return mix ? { attempt: mix.attempt, beforeMm: [], afterMm: [], overHoleText: null } : null
  }
  const { record, attempt } = found
  const holeClock = record.holeMark.split('@')[1] ?? ''
  const after = new Map(record.after.map((one) => [one.mark, one.reading]))
  const rows = record.before
    .flatMap(({ mark, reading: before }) => {
      const [row = '', clock] = mark.split('@')
      const reading = after.get(mark)
      if (clock !== holeClock || reading?.kind !== 'number' || before.kind !== 'number') return []
      const xMm = Number(row.replace('−', '-'))
      const difference = plusFraction(
        fractionOf(reading),
        fractionOf({ digits: 0 - before.digits, scale: before.scale }),
      )
      return [
        {
          mark,
          before: rowReading(xMm, before),
          after: rowReading(xMm, reading),
          thickness: showFraction(difference, Math.max(reading.scale, before.scale)),
        },
      ]
    })
    .sort((a, b) => a.before.xMm - b.before.xMm)
  return {
    attempt,
    beforeMm: rows.map((row) => row.before),
    afterMm: rows.map((row) => row.after),
    overHoleText: rows.find((row) => row.mark === record.holeMark)?.thickness ?? null,
  }
}

function wrapNumbers(state: RepairState): SectionNumbers['wrap'] {
  const thickness = latestRecord(state, 'thickness')
  const count = latestRecord(state, 'ply-count')
  const plyNos = recordsOf(state, 'ply')
  const latestPly = plyNos.at(-1)
  const roll = latestRecord(state, 'tape-roll')
  const clock = state.defect?.clock ?? state.opened.body.clock
  const row = thickness ? rowOf(thickness.record.grid, clock, thickness.record.readings) : []
  const plies = count
    ? toNumber(count.record.plies)
    : latestPly
      ? Math.max(...plyNos.filter((one) => one.attempt === latestPly.attempt).map((one) => one.record.plyNo))
      : state.design
        ? toNumber(state.design.plies)
        : null
  const attempt = thickness?.attempt ?? count?.attempt ?? latestPly?.attempt ?? roll?.attempt ?? null
  if (plies === null && attempt === null) return null
  const numbers = row.flatMap((one) => (one.mm === null ? [] : [one.mm]))
  return {
    attempt,
    plies,
    row,
    thicknessMm:
      numbers.length > 0
        ? numbers.reduce((sum, one) => sum + one, 0) / numbers.length
        : state.design
          ? drawnMm(state.design.minThickness)
          : null,
    text:
      numbers.length > 0
        ? `${Math.min(...numbers)} to ${Math.max(...numbers)} mm at ${clock} o’clock`
        : state.design
          ? `≥ ${showReading(state.design.minThickness)} mm by design`
          : '',
  }
}
