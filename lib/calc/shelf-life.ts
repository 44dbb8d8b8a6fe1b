import { optional, whole } from '@/lib/calc/argument'
import { addMonths, type CalendarDate, calendarDay, dayNumber, dayOfNumber, showDay } from '@/lib/calc/calendar-day'
import { formula } from '@/lib/calc/formula'
import { isRefused, refuse } from '@/lib/calc/refusal'

/** What is known about a batch: printed expiry, day made and life, day opened and opened life. All may be unknown. */
const BATCH = {
  expiryDay: optional(calendarDay('expiry')),
  madeDay: optional(calendarDay('made')),
  lifeMonths: optional(whole('life_months', 0)),
  openedDay: optional(calendarDay('opened')),
  openedDays: optional(whole('opened_days', 0)),
}

/**
 * Last day on which a batch may be used, that day included: the earliest of printed expiry, made + life (months clamped to the
 * month's end) and opened + opened life (days). `lastDay` is null when nothing is known, or when it was opened and the
 * opened life is not known: never valid. Refuses `bad_date_NAME`, `missing_made` (a life needs the day made).
 * @source convention of this project (medium), arithmetic high. The day is the local day at the work place.
 */
export const lastGoodDay = formula(BATCH, ({ expiryDay, madeDay, lifeMonths, openedDay, openedDays }) => {
  if (lifeMonths !== null && madeDay === null) return refuse('missing_made')
  if (openedDay !== null && openedDays === null) return { lastDay: null }
  const ends: CalendarDate[] = []
  if (expiryDay !== null) ends.push(expiryDay)
  if (madeDay !== null && lifeMonths !== null) ends.push(addMonths(madeDay, lifeMonths))
  if (openedDay !== null && openedDays !== null) ends.push(dayOfNumber(dayNumber(openedDay) + openedDays))
  if (ends.length === 0) return { lastDay: null }
  return { lastDay: showDay(dayOfNumber(Math.min(...ends.map(dayNumber)))) }
})

export type ShelfStatus = 'valid' | 'expired' | 'unknown' | 'not_yet_made'

/**
 * Shelf status of a batch on a day: `valid` through its last good day, `expired` after it, `unknown` when no last day can be
 * told, `not_yet_made` when the day made lies after `onDay`. `daysLeft` counts to the last day, negative once expired.
 * Refuses what {@link lastGoodDay} refuses, and `opened_after_use`.
 */
export const shelfLife = formula({ onDay: calendarDay('on'), ...BATCH }, ({ onDay, ...batch }) => {
  const show = (day: CalendarDate | null) => (day === null ? null : showDay(day))
  const last = lastGoodDay({
    expiryDay: show(batch.expiryDay),
    madeDay: show(batch.madeDay),
    lifeMonths: batch.lifeMonths,
    openedDay: show(batch.openedDay),
    openedDays: batch.openedDays,
  })
  if (isRefused(last)) return last
  const today = dayNumber(onDay)
  const without = (status: ShelfStatus) => ({ status, lastDay: null, daysLeft: null })
  if (batch.madeDay !== null && dayNumber(batch.madeDay) > today) return without('not_yet_made')
  if (batch.openedDay !== null && dayNumber(batch.openedDay) > today) return refuse('opened_after_use')
  const lastDay = last.lastDay === null ? null : calendarDay('last_day').read(last.lastDay)
  if (lastDay === null || isRefused(lastDay)) return without('unknown')
  const daysLeft = dayNumber(lastDay) - today
  const status: ShelfStatus = daysLeft >= 0 ? 'valid' : 'expired'
  return { status, lastDay: showDay(lastDay), daysLeft }
})
