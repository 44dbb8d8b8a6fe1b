/**
 * When the file says the photo was taken. `text` is ISO 8601 with the offset only where the file names one; a claim
 * without an offset is the camera's local time and stays so.
 */
export type TakenAtClaim =
  | { kind: 'absent' }
  | { kind: 'claimed'; text: string; hasOffset: boolean; asRead: string; offsetAsRead: string | null }
  | {
      kind: 'invalid'
      reason: 'not-a-time' | 'no-such-time' | 'no-such-offset'
      asRead: string
      offsetAsRead: string | null
    }

const DATE_TIME = /^(\d{4}):(\d{2}):(\d{2}) (\d{2}):(\d{2}):(\d{2})$/
const OFFSET = /^[+-](\d{2}):(\d{2})$/
const MAX_OFFSET_MINUTES = 14 * 60

/**
 * Combine the three EXIF texts into one claim, e.g. `2021:04:11 15:47:53`, `054`, `-05:00` into
 * `2021-04-11T15:47:53.054-05:00`. A time that no clock shows is reported as invalid, never repaired.
 * @param asRead DateTimeOriginal
 * @param subSeconds SubSecTimeOriginal, the digits after the decimal point; ignored when it is anything else
 * @param offset OffsetTimeOriginal
 * @source CIPA DC-008 (Exif 2.32) 4.6.5 tags 36867, 36881, 37521
 */
export function combineTakenAt(asRead: string | null, subSeconds: string | null, offset: string | null): TakenAtClaim {
  if (asRead === null) return { kind: 'absent' }
  const offsetAsRead = offset
  const invalid = (reason: 'not-a-time' | 'no-such-time' | 'no-such-offset') =>
    ({ kind: 'invalid', reason, asRead, offsetAsRead }) as const
  const parts = DATE_TIME.exec(asRead)
  if (parts === null) return invalid('not-a-time')
  const [year, month, day, hour, minute, second] = parts.slice(1).map(Number) as [
    number,
    number,
    number,
    number,
    number,
    number,
  ]
  if (!isTimeOnClock(hour, minute, second) || !isDayInCalendar(year, month, day)) return invalid('no-such-time')
  if (offset !== null && !isOffset(offset)) return invalid('no-such-offset')
  const fraction = subSeconds !== null && /^\d{1,9}$/.test(subSeconds) ? `.${subSeconds}` : ''
  const text = `${asRead.slice(0, 10).replaceAll(':', '-')}T${asRead.slice(11)}${fraction}${offset ?? ''}`
  return { kind: 'claimed', text, hasOffset: offset !== null, asRead, offsetAsRead }
}

function isTimeOnClock(hour: number, minute: number, second: number): boolean {
  return hour <= 23 && minute <= 59 && second <= 59
}

function isDayInCalendar(year: number, month: number, day: number): boolean {
  if (year < 1 || month < 1 || month > 12 || day < 1) return false
  const isLeap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0
  const lastDay = month === 2 ? (isLeap ? 29 : 28) : [4, 6, 9, 11].includes(month) ? 30 : 31
  return day <= lastDay
}

function isOffset(text: string): boolean {
  const parts = OFFSET.exec(text)
  return parts !== null && Number(parts[2]) <= 59 && Number(parts[1]) * 60 + Number(parts[2]) <= MAX_OFFSET_MINUTES
}
