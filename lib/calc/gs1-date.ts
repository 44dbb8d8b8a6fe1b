import { oneOf, text, whole } from '@/lib/calc/argument'
import { daysInMonth, showDay } from '@/lib/calc/calendar-day'
import { formula } from '@/lib/calc/formula'
import { refuse } from '@/lib/calc/refusal'

/** A date as a GS1 element states it: the day it counts as, and the days it may mean when the day is left open. */
export interface Gs1Date {
  readonly date: string
  readonly first: string
  readonly last: string
  readonly isDayGiven: boolean
}

/** Year of a two-digit year beside a reference year: more than 50 ahead is the past century, 50 or more behind the next. */
function fullYear(twoDigits: number, referenceYear: number): number {
  const century = referenceYear - (referenceYear % 100)
  const ahead = twoDigits - (referenceYear % 100)
  if (ahead >= 51) return century - 100 + twoDigits
  return ahead <= -50 ? century + 100 + twoDigits : century + twoDigits
}

/**
 * Date of a GS1 element: six digits YYMMDD, AI 11 (production) or 17 (expiry). Day 00 leaves the day open: AI 17 counts as the
 * last day of the month (high); AI 11 as the first, the safe end for age (medium).
 * Refuses `date_shape`, `date_month`, `date_day`, `unknown_ai`, `missing_ref_year`.
 * @source GS1 General Specifications sections 3 and 7.
 */
export const gs1Date = formula(
  { value: text('value'), ai: oneOf('ai', ['11', '17']), referenceYear: whole('ref_year', 1) },
  ({ value, ai, referenceYear }) => {
    const parts = /^(\d{2})(\d{2})(\d{2})$/.exec(value)
    if (parts === null) return refuse('date_shape')
    const [year, month, day] = [fullYear(Number(parts[1]), referenceYear), Number(parts[2]), Number(parts[3])]
    if (month < 1 || month > 12) return refuse('date_month')
    const length = daysInMonth(year, month)
    if (day > length) return refuse('date_day')
    const on = (dayOfMonth: number) => showDay({ year, month, day: dayOfMonth })
    if (day > 0) return { date: on(day), first: on(day), last: on(day), isDayGiven: true }
    return { date: on(ai === '17' ? length : 1), first: on(1), last: on(length), isDayGiven: false }
  },
)
