import * as z from 'zod'

const PATTERN = /^(\d{4})-(\d{2})-(\d{2})T(\d{2}):(\d{2}):(\d{2})(?:\.\d{1,3})?(Z|[+-]\d{2}:\d{2})$/

/** An instant as observed, with its UTC offset kept: `2026-05-12T09:22:00+01:00`. */
export const Moment = z
  .string()
  .regex(PATTERN, 'a time with its UTC offset')
  .refine((text) => !Number.isNaN(Date.parse(text)), 'no such time')
export type Moment = z.infer<typeof Moment>

/** A calendar day at the place of use: `2026-05-12`. */
export const CalendarDay = z
  .string()
  .regex(/^\d{4}-\d{2}-\d{2}$/, 'a day as YYYY-MM-DD')
  .refine(isRealDay, 'no such day')
export type CalendarDay = z.infer<typeof CalendarDay>

function isRealDay(text: string): boolean {
  const time = Date.parse(`${text}T00:00:00Z`)
  return !Number.isNaN(time) && new Date(time).toISOString().slice(0, 10) === text
}

/** Milliseconds since the epoch of a moment. @throws RangeError when it is no moment */
export function instantOf(moment: Moment): number {
  const ms = Date.parse(moment)
  if (Number.isNaN(ms)) throw new RangeError(`not a moment: ${moment}`)
  return ms
}

/** The calendar day at the place, as the moment's own offset tells it. */
export function dayOf(moment: Moment): CalendarDay {
  return moment.slice(0, 10)
}

/** Clock time as observed, `09:22` or `11:32:05` when seconds were taken. */
export function showClock(moment: Moment): string {
  const text = moment.slice(11, 19)
  return text.endsWith(':00') ? text.slice(0, 5) : text
}

/** Day and clock time as observed with the offset: `2026-05-12 09:22 +01:00`. */
export function showMoment(moment: Moment): string {
  const offset = moment.endsWith('Z') ? 'UTC' : moment.slice(-6)
  return `${dayOf(moment)} ${showClock(moment)} ${offset}`
}

/** Minutes from one moment to another, exact to the millisecond. */
export function minutesBetween(from: Moment, to: Moment): number {
  return (instantOf(to) - instantOf(from)) / 60_000
}

/** A UTC offset of so many minutes, east positive: `+01:00`. */
export function showOffset(minutes: number): string {
  const two = (value: number) => String(Math.floor(value)).padStart(2, '0')
  return `${minutes < 0 ? '-' : '+'}${two(Math.abs(minutes) / 60)}:${two(Math.abs(minutes) % 60)}`
}

/** The moment of an instant written with a given offset such as `+01:00`. */
export function momentOf(instantMs: number, offset: string): Moment {
  const minutes =
    offset === 'Z'
      ? 0
      : (offset.startsWith('-') ? -1 : 1) * (Number(offset.slice(1, 3)) * 60 + Number(offset.slice(4, 6)))
  return new Date(instantMs + minutes * 60_000).toISOString().slice(0, 19) + offset
}
