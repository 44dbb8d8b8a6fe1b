import { whole } from '@/lib/calc/argument'
import { addMonths, calendarDay, showDay } from '@/lib/calc/calendar-day'
import { formula } from '@/lib/calc/formula'
import { refuse } from '@/lib/calc/refusal'

/**
 * Day some whole months later, the day clamped to the month's end: 31 August + 6 is 28 or 29 February.
 * Refuses `bad_date_date`, `months_not_whole`, `date_out_of_range` beyond the years 1 to 9999.
 * @source convention of this project (medium), arithmetic high.
 */
export const monthsLater = formula({ date: calendarDay('date'), months: whole('months') }, ({ date, months }) => {
  const later = addMonths(date, months)
  return later.year < 1 || later.year > 9999 ? refuse('date_out_of_range') : { date: showDay(later) }
})
