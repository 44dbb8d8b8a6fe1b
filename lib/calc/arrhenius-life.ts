import { isAbove, isBelow } from '@/lib/calc/comparison'
import type { MakerRow } from '@/lib/calc/maker-table'

const KELVIN_AT_ZERO_C = 273.15

/**
 * Time in minutes at a temperature between two rows of a table sorted from cold to warm, or null outside the table.
 * u = (1/T - 1/T1)/(1/T2 - 1/T1) in kelvin; ln tau = ln tau1 + u (ln tau2 - ln tau1). A row's own temperature gives the row.
 * @source Arrhenius form, textbook; no standard fixes it. Confidence medium.
 */
export function arrheniusLifeMin(sorted: readonly MakerRow[], tempC: number): number | null {
  let colder: MakerRow | null = null
  for (const row of sorted) {
    if (tempC === row[0]) return row[1]
    if (colder === null) {
      if (isBelow(tempC, row[0])) return null
    } else if (!isAbove(tempC, row[0])) {
      return between(colder, row, tempC)
    }
    colder = row
  }
  return null
}

function between(colder: MakerRow, warmer: MakerRow, tempC: number): number {
  const inverse = (tC: number) => 1 / (tC + KELVIN_AT_ZERO_C)
  const u = (inverse(tempC) - inverse(colder[0])) / (inverse(warmer[0]) - inverse(colder[0]))
  return Math.exp(Math.log(colder[1]) + u * (Math.log(warmer[1]) - Math.log(colder[1])))
}
