import { compareFractions, type Decimal, fractionOf } from '../decimal'
import type { CalendarDay } from '../time'

const DAY_MS = 86_400_000

/** The day a number of days after another. */
export function addDays(day: CalendarDay, days: number): CalendarDay {
  return new Date(Date.parse(`${day}T00:00:00Z`) + days * DAY_MS).toISOString().slice(0, 10)
}

/**
 * The same day a number of years on; a part of a year counts in whole months begun and completed, never rounded up. The last day of February
 * stays in February.
 */
export function addYears(day: CalendarDay, years: Decimal): CalendarDay {
  const { numerator, denominator } = fractionOf(years)
  const months = Number((numerator * 12n) / denominator)
  const year = Number(day.slice(0, 4))
  const month = Number(day.slice(5, 7)) - 1 + months
  const dayOfMonth = Number(day.slice(8, 10))
  const lastOfMonth = new Date(Date.UTC(year, month + 1, 0)).getUTCDate()
  return new Date(Date.UTC(year, month, Math.min(dayOfMonth, lastOfMonth))).toISOString().slice(0, 10)
}

/** The smaller of two decimals. */
export function smallerDecimal(a: Decimal, b: Decimal): Decimal {
  return compareFractions(fractionOf(a), fractionOf(b)) <= 0 ? a : b
}
