import { showReading } from '@/lib/domain/reading'
import type { Grid } from '@/lib/domain/records/common'

/** Marks laid out for keying: columns and rows with the mark of each cell. Order of keying is row by row. */
export type MarkShape = { columns: string[]; rows: string[]; marks: string[][] }

/** Stations across, clock positions down: mark `C-6`. */
export function stationShape(grid: Grid): MarkShape {
  const columns = grid.stations.map((station) => station.name)
  return {
    columns,
    rows: [...grid.clocks],
    marks: grid.clocks.map((clock) => columns.map((column) => `${column}-${clock}`)),
  }
}

/** Filler marks: rows at −25, 0 and +25 mm from the hole, one clock hour each side of it: mark `+25@7`. */
export function fillerShape(leakClock: string): MarkShape {
  const centre = Number.parseInt(leakClock, 10)
  const hour = (step: number) => String(((centre + step + 11) % 12) + 1)
  const columns = [hour(-1), hour(0), hour(1)]
  const rows = ['-25', '0', '+25']
  return { columns, rows, marks: rows.map((row) => columns.map((clock) => `${row}@${clock}`)) }
}

/** Numbered marks of one prefix, four across: `P1` to `P8`. */
export function numberedShape(prefix: string, count: number): MarkShape {
  const all = Array.from({ length: count }, (_, place) => `${prefix}${place + 1}`)
  const width = Math.min(4, Math.max(1, count))
  const marks = Array.from({ length: Math.ceil(count / width) }, (_, row) =>
    all.slice(row * width, row * width + width),
  )
  return { columns: Array.from({ length: width }, () => ''), rows: marks.map(() => ''), marks }
}

/** Station caption such as `A −130`. */
export function stationCaption(grid: Grid, name: string): string {
  const station = grid.stations.find((one) => one.name === name)
  return station ? showReading(station.fromLeak).replace('-', '−') : ''
}
