import { type Argument, list, number, pair, positive } from '@/lib/calc/argument'
import { type Refusal, refuse } from '@/lib/calc/refusal'

/** One row of a maker's table: temperature in degC, time in minutes. */
export type MakerRow = readonly [tempC: number, timeMin: number]

/** A maker's table as an argument: rows of temperature and time, in any order. */
export const makerTable: Argument<readonly (readonly [number | null, number | null])[] | null, MakerRow[]> = list(
  'table',
  pair('table', number('table'), positive('table')),
)

/**
 * The rows from cold to warm. Refuses `table_too_short` below `leastRows`, `table_duplicate_temperature`, and
 * `table_not_monotonic` when a time rises with temperature: such a table is mistyped.
 */
export function sortMakerTable(rows: readonly MakerRow[], leastRows: number): readonly MakerRow[] | Refusal {
  if (rows.length < leastRows) return refuse('table_too_short')
  const sorted = [...rows].sort((a, b) => a[0] - b[0])
  let colder: MakerRow | null = null
  for (const row of sorted) {
    if (colder !== null && row[0] === colder[0]) return refuse('table_duplicate_temperature')
    colder = row
  }
  colder = null
  for (const row of sorted) {
    if (colder !== null && row[1] > colder[1]) return refuse('table_not_monotonic')
    colder = row
  }
  return sorted
}
