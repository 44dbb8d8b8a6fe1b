import { isRefused } from '@/lib/calc/refusal'
import { workingTime } from '@/lib/calc/working-time'
import { toNumber } from '../decimal'
import type { TimeTable } from '../specification'

/** A table's time at a temperature in °C, minutes, or why it has none. */
export type TableTime =
  | { ok: true; minutes: number }
  | { ok: false; code: 'too-warm' | 'temp-below-table' | 'table-refused' }

/** The working time at a temperature: `step` takes the first row at or above it, `interpolated` goes by Arrhenius between the rows. Above the table: `too-warm`. */
export function workingMinutes(table: TimeTable, tempC: number): TableTime {
  const rows = rowsOf(table)
  const answer = workingTime({ table: rows, kind: table.kind, tempC })
  if (!isRefused(answer)) return { ok: true, minutes: answer.lifeMin }
  if (answer.refused !== 'outside_table') return { ok: false, code: 'table-refused' }
  return { ok: false, code: rows.every(([temp]) => temp < tempC) ? 'too-warm' : 'temp-below-table' }
}

/** The time that something needs at a temperature: a `step` table takes the colder row, whose time is longer; nothing is extrapolated. */
export function neededMinutes(table: TimeTable, tempC: number): TableTime {
  if (table.kind === 'interpolated') return workingMinutes(table, tempC)
  const colder = rowsOf(table)
    .filter(([temp]) => temp <= tempC)
    .sort((a, b) => b[0] - a[0])[0]
  return colder ? { ok: true, minutes: colder[1] } : { ok: false, code: 'temp-below-table' }
}

/** Rows of a specification's table for lib/calc: °C and minutes. */
export function rowsOf(table: TimeTable): [number, number][] {
  return table.rows.map((row) => [toNumber(row.temp), toNumber(row.minutes)])
}

/** A computed figure as shown: whole where it is whole, else with so many places. */
export function showFigure(value: number, places: number): string {
  return Number.isInteger(value) ? String(value) : value.toFixed(places)
}
