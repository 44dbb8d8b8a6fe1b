import type { Argument } from '@/lib/calc/argument'
import { refuse } from '@/lib/calc/refusal'

/** A calendar day at the work place, of the proleptic Gregorian calendar. */
export interface CalendarDate {
  readonly year: number
  readonly month: number
  readonly day: number
}

/** Days in a month, leap years counted. */
export function daysInMonth(year: number, month: number): number {
  if (month === 2) return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0) ? 29 : 28
  return [4, 6, 9, 11].includes(month) ? 30 : 31
}

/** `YYYY-MM-DD`, for years 1 to 9999. */
export function showDay({ year, month, day }: CalendarDate): string {
  return `${String(year).padStart(4, '0')}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`
}

/** The day that a `YYYY-MM-DD` text names, or null when the shape or the day does not exist. */
export function parseDay(text: string): CalendarDate | null {
  const parts = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text)
  if (parts === null) return null
  const [year, month, day] = [Number(parts[1]), Number(parts[2]), Number(parts[3])]
  if (year < 1 || month < 1 || month > 12 || day < 1 || day > daysInMonth(year, month)) return null
  return { year, month, day }
}

/** Number of the day counted from 1970-01-01 = 0. */
export function dayNumber({ year, month, day }: CalendarDate): number {
  const shifted = month <= 2 ? year - 1 : year
  const era = Math.floor(shifted / 400)
  const yearOfEra = shifted - era * 400
  const dayOfYear = Math.floor((153 * ((month + 9) % 12) + 2) / 5) + day - 1
  const dayOfEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear
  return era * 146_097 + dayOfEra - 719_468
}

/** The day a number of days after 1970-01-01: the inverse of {@link dayNumber}. */
export function dayOfNumber(count: number): CalendarDate {
  const shifted = count + 719_468
  const era = Math.floor(shifted / 146_097)
  const dayOfEra = shifted - era * 146_097
  const yearOfEra = Math.floor(
    (dayOfEra - Math.floor(dayOfEra / 1460) + Math.floor(dayOfEra / 36_524) - Math.floor(dayOfEra / 146_096)) / 365,
  )
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100))
  const marchMonth = Math.floor((5 * dayOfYear + 2) / 153)
  const month = marchMonth < 10 ? marchMonth + 3 : marchMonth - 9
  const day = dayOfYear - Math.floor((153 * marchMonth + 2) / 5) + 1
  return { year: yearOfEra + era * 400 + (month <= 2 ? 1 : 0), month, day }
}

/** The day some months later (earlier when negative), clamped to the month's end: 31 August + 6 is 28 or 29 February. */
export function addMonths({ year, month, day }: CalendarDate, months: number): CalendarDate {
  const count = year * 12 + month - 1 + months
  const [newYear, newMonth] = [Math.floor(count / 12), (((count % 12) + 12) % 12) + 1]
  return { year: newYear, month: newMonth, day: Math.min(day, daysInMonth(newYear, newMonth)) }
}

/** A day as an argument, `YYYY-MM-DD`. Refuses `missing_` and `bad_date_` followed by `code`. */
export function calendarDay(code: string): Argument<string | null, CalendarDate> {
  return {
    code,
    read: (value) => {
      if (value === null || value === undefined || value === '') return refuse(`missing_${code}`)
      return (typeof value === 'string' ? parseDay(value) : null) ?? refuse(`bad_date_${code}`)
    },
  }
}
