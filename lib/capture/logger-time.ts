import { instantOf, Moment } from '@/lib/domain/time'

/** What a logger's time cell says: a day in three parts as written, a clock time and an offset, each perhaps missing. */
export type LoggerTime = {
  day: { parts: readonly [string, string, string]; isYearFirst: boolean } | null
  clock: string
  offset: string | null
}
export type DayOrder = 'day first' | 'month first'

const TIME =
  /^(?:(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})|(\d{1,2})[-/.](\d{1,2})[-/.](\d{4}))?[T ,]*(\d{1,2}):(\d{2})(?::(\d{2})(?:[.,]\d{1,3})?)?\s*(Z|UTC|[+−-]\d{2}:?\d{2})?$/
const DAY = /^(?:(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})|(\d{1,2})[-/.](\d{1,2})[-/.](\d{4}))$/

/** Read a time cell such as `2026-05-12T12:30:00+01:00`, `12.05.2026 12:30` or `12:30`; null when it is none of these. */
export function parseLoggerTime(text: string): LoggerTime | null {
  const match = TIME.exec(text.trim())
  if (!match) return null
  const [, year, month, day, one, two, late, hour = '', minute = '', second = '00', offset] = match
  if (Number(hour) > 23 || Number(minute) > 59 || Number(second) > 59) return null
  return {
    day:
      year && month && day ? dated(year, month, day, true) : one && two && late ? dated(one, two, late, false) : null,
    clock: `${hour.padStart(2, '0')}:${minute}:${second}`,
    offset: offset ? offsetText(offset) : null,
  }
}

/** Whether a cell is a day without a time. */
export function isLoggerDay(text: string): boolean {
  return DAY.test(text.trim())
}

function dated(a: string, b: string, c: string, isYearFirst: boolean): LoggerTime['day'] {
  return { parts: [a, b, c], isYearFirst }
}

function offsetText(text: string): string {
  if (text === 'Z' || text === 'UTC') return 'Z'
  const plain = text.replace('−', '-').replace(':', '')
  return `${plain.slice(0, 3)}:${plain.slice(3)}`
}

/** Which order the days of a file are written in, as far as the file itself proves it: a part above 12 can be no month. */
export function provenDayOrder(times: readonly LoggerTime[]): DayOrder | 'not needed' | 'unknown' | 'contradicts' {
  const days = times.flatMap((one) => (one.day && !one.day.isYearFirst ? [one.day.parts] : []))
  if (days.length === 0) return 'not needed'
  const isDayFirst = days.some(([first]) => Number(first) > 12)
  const isMonthFirst = days.some(([, second]) => Number(second) > 12)
  if (isDayFirst && isMonthFirst) return 'contradicts'
  return isDayFirst ? 'day first' : isMonthFirst ? 'month first' : 'unknown'
}

/** The moment of a time cell with what the person answered; null where there is no such time. */
export function momentOfLogger(time: LoggerTime, day: string, order: DayOrder | null, offset: string): Moment | null {
  const text = `${time.day ? dayText(time.day, order) : day}T${time.clock}${time.offset ?? offset}`
  const parsed = Moment.safeParse(text)
  if (!parsed.success) return null
  const written = text.slice(0, 10)
  const shifted = new Date(instantOf(`${written}T00:00:00Z`)).toISOString().slice(0, 10)
  return shifted === written ? parsed.data : null
}

function dayText({ parts: [a, b, c], isYearFirst }: NonNullable<LoggerTime['day']>, order: DayOrder | null): string {
  const [year, month, day] = isYearFirst ? [a, b, c] : order === 'month first' ? [c, a, b] : [c, b, a]
  return `${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`
}
