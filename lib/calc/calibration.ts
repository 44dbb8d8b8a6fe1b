import { optional, whole } from '@/lib/calc/argument'
import { addMonths, calendarDay, dayNumber, dayOfNumber, showDay } from '@/lib/calc/calendar-day'
import { formula } from '@/lib/calc/formula'
import { refuse } from '@/lib/calc/refusal'

export type CalibrationStatus = 'valid' | 'overdue' | 'not_yet_calibrated' | 'unknown'

/**
 * Calibration status of an instrument on a day: valid when calibrated <= day <= due, both days included; due is the earliest
 * of the certificate's due day and calibrated + interval (months). `unknown` (never valid) without a calibration day or a due day.
 * Refuses `bad_date_NAME`, `due_before_calibration`.
 * @source convention of this project (medium), arithmetic high.
 */
export const calibrationStatus = formula(
  {
    onDay: calendarDay('on'),
    calibratedDay: optional(calendarDay('calibrated')),
    intervalMonths: optional(whole('interval_months', 1)),
    dueDay: optional(calendarDay('due')),
  },
  ({ onDay, calibratedDay, intervalMonths, dueDay }) => {
    const unknown = { status: 'unknown' as CalibrationStatus, dueDay: null, daysLeft: null }
    if (calibratedDay === null) return unknown
    const calibrated = dayNumber(calibratedDay)
    const dues: number[] = []
    if (dueDay !== null) dues.push(dayNumber(dueDay))
    if (intervalMonths !== null) dues.push(dayNumber(addMonths(calibratedDay, intervalMonths)))
    if (dues.length === 0) return unknown
    const due = Math.min(...dues)
    if (due < calibrated) return refuse('due_before_calibration')
    const today = dayNumber(onDay)
    const late: CalibrationStatus = today > due ? 'overdue' : 'valid'
    const status: CalibrationStatus = today < calibrated ? 'not_yet_calibrated' : late
    return { status, dueDay: showDay(dayOfNumber(due)), daysLeft: due - today }
  },
)

/**
 * Whether a calibration covers a whole work period: calibrated <= first and last <= due, ends included.
 * Refuses `missing_NAME`, `bad_date_NAME`, `period_reversed`, `due_before_calibration`.
 * @source convention of this project (medium).
 */
export const calibrationCovers = formula(
  {
    firstDay: calendarDay('first'),
    lastDay: calendarDay('last'),
    calibratedDay: calendarDay('calibrated'),
    dueDay: calendarDay('due'),
  },
  ({ firstDay, lastDay, calibratedDay, dueDay }) => {
    if (dayNumber(lastDay) < dayNumber(firstDay)) return refuse('period_reversed')
    if (dayNumber(dueDay) < dayNumber(calibratedDay)) return refuse('due_before_calibration')
    return { isCovered: dayNumber(calibratedDay) <= dayNumber(firstDay) && dayNumber(lastDay) <= dayNumber(dueDay) }
  },
)
