import { notNegative, number, oneOf, optional } from '@/lib/calc/argument'
import { arrheniusLifeMin } from '@/lib/calc/arrhenius-life'
import { isAtMost } from '@/lib/calc/comparison'
import { formula } from '@/lib/calc/formula'
import { type MakerRow, makerTable, sortMakerTable } from '@/lib/calc/maker-table'
import { isRefused, refuse } from '@/lib/calc/refusal'

interface WorkingTime {
  readonly lifeMin: number
  readonly remainingMin: number | null
  readonly isMet: boolean | null
}

function answer(lifeMin: number, elapsedMin: number | null): WorkingTime {
  if (elapsedMin === null) return { lifeMin, remainingMin: null, isMet: null }
  return { lifeMin, remainingMin: lifeMin - elapsedMin, isMet: isAtMost(elapsedMin, lifeMin) }
}

function stepLifeMin(sorted: readonly MakerRow[], tempC: number): number | null {
  return sorted.find((row) => isAtMost(tempC, row[0]))?.[1] ?? null
}

/**
 * Working time in minutes at a temperature (degC), from the maker's table [degC, min]. `elapsedMin` is optional.
 * `step`: a row is valid up to its temperature, so the first row at or above `tempC` counts, also below the first row.
 * `interpolated`: Arrhenius between rows, see `arrheniusLifeMin`; nothing outside the table.
 * Refuses `outside_table`, `table_too_short` (no row; interpolated: one row), `table_duplicate_temperature`,
 * `table_not_monotonic`, `unknown_kind`.
 * @source the maker's table; textbook. Confidence medium. Holds for the table's own batch size only: a larger mix lasts shorter.
 */
export const workingTime = formula(
  {
    table: makerTable,
    kind: oneOf('kind', ['step', 'interpolated']),
    tempC: number('temp_C'),
    elapsedMin: optional(notNegative('elapsed_min')),
  },
  ({ table, kind, tempC, elapsedMin }) => {
    const sorted = sortMakerTable(table, kind === 'step' ? 1 : 2)
    if (isRefused(sorted)) return sorted
    const lifeMin = kind === 'step' ? stepLifeMin(sorted, tempC) : arrheniusLifeMin(sorted, tempC)
    return lifeMin === null ? refuse('outside_table') : answer(lifeMin, elapsedMin)
  },
)

/** Pot life in minutes by Arrhenius between the rows: {@link workingTime} of kind `interpolated`, with the same refusals. */
export const potLife = formula(
  { table: makerTable, tempC: number('temp_C'), elapsedMin: optional(notNegative('elapsed_min')) },
  (read) => workingTime({ ...read, kind: 'interpolated' }),
)
