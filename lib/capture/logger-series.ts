import { parseDecimal } from '@/lib/domain/decimal'
import type { Measured } from '@/lib/domain/reading'
import { done, type Result, refused } from '@/lib/domain/result'
import { instantOf, type Moment } from '@/lib/domain/time'
import { cutLoggerText, type LoggerLine, type LoggerSheet, type Separator } from './logger-lines'
import { type DayOrder, momentOfLogger, provenDayOrder } from './logger-time'

export type LoggerUnit = 'degC' | 'degF'
/** What the file leaves open and the person answers; nothing of it is ever guessed. */
export type LoggerAnswers = { offset?: string; day?: string; dayOrder?: DayOrder; unit?: LoggerUnit }
export type LoggerQuestion = 'offset' | 'day' | 'day-order' | 'unit'
export type LoggerPoint = { at: Moment; reading: Measured }
export type LoggerColumn = { name: string; unit: LoggerUnit | null; points: LoggerPoint[] }
/** One line that could not be taken, with its number and what to do about it. */
export type BadLine = { lineNo: number; text: string; problem: string }
export type LoggerSeries = {
  separator: Separator
  /** Questions that still need an answer; while there are any, no column has points. */
  asks: LoggerQuestion[]
  columns: LoggerColumn[]
  badLines: BadLine[]
  lineCount: number
}
export type LoggerRefusal = {
  code: 'file-empty' | 'file-too-large' | 'not-text' | 'no-times' | 'too-many-lines' | 'days-contradict'
}

/** Largest logger file read, bytes, and most lines: a record holds no longer series. */
export const LOGGER_BYTES_MOST = 2_000_000
export const LOGGER_LINES_MOST = 5000
const UNIT = /(?:°|º|deg\.?\s*)\s*([CF])\b|[([]\s*([CF])\s*[)\]]/i

/**
 * Read a logger's file: a time in the first column (or a day and a time in the first two), a temperature of one probe in each further column. Separators `,` `;`
 * tab; decimal point or, unless the comma separates, decimal comma. The text of each value is kept as it stands in the file.
 * Refuses `file-empty`, `file-too-large`, `not-text`, `no-times`, `too-many-lines`, `days-contradict`.
 */
export function parseLoggerSeries(text: string, answers: LoggerAnswers): Result<LoggerSeries, LoggerRefusal> {
  if (text.length > LOGGER_BYTES_MOST) return refused({ code: 'file-too-large' })
  if (text.includes('\u0000')) return refused({ code: 'not-text' })
  if (text.trim() === '') return refused({ code: 'file-empty' })
  const sheet = cutLoggerText(text)
  if (!sheet || sheet.names.length === 0) return refused({ code: 'no-times' })
  if (sheet.lines.length > LOGGER_LINES_MOST) return refused({ code: 'too-many-lines' })
  const units = sheet.names.map((name, column) => unitOf(name, sheet, column))
  const order = provenDayOrder(sheet.lines.flatMap((line) => line.time ?? []))
  if (order === 'contradicts') return refused({ code: 'days-contradict' })
  const asks = asksOf(sheet, units, order, answers)
  const base = { separator: sheet.separator, lineCount: sheet.lines.length }
  if (asks.length > 0)
    return done({
      ...base,
      asks,
      columns: sheet.names.map((name, at) => ({ name, unit: units[at] ?? null, points: [] })),
      badLines: [],
    })
  const given: LoggerAnswers =
    order === 'day first' || order === 'month first' ? { ...answers, dayOrder: order } : answers
  return done({ ...base, asks, ...readLines(sheet, units, given) })
}

function unitOf(name: string, sheet: LoggerSheet, column: number): LoggerUnit | null {
  const found = UNIT.exec(name) ?? sheet.lines.map((line) => UNIT.exec(line.cells[column] ?? '')).find((one) => one)
  const letter = (found?.[1] ?? found?.[2])?.toUpperCase()
  return letter === 'C' ? 'degC' : letter === 'F' ? 'degF' : null
}

function asksOf(
  sheet: LoggerSheet,
  units: readonly (LoggerUnit | null)[],
  order: ReturnType<typeof provenDayOrder>,
  answers: LoggerAnswers,
): LoggerQuestion[] {
  const times = sheet.lines.flatMap((line) => line.time ?? [])
  return [
    ...(times.some((one) => one.day === null) && !answers.day ? (['day'] as const) : []),
    ...(order === 'unknown' && !answers.dayOrder ? (['day-order'] as const) : []),
    ...(times.some((one) => one.offset === null) && !answers.offset ? (['offset'] as const) : []),
    ...(units.some((one) => one === null) && !answers.unit ? (['unit'] as const) : []),
  ]
}

function readLines(
  sheet: LoggerSheet,
  units: readonly (LoggerUnit | null)[],
  answers: LoggerAnswers,
): Pick<LoggerSeries, 'columns' | 'badLines'> {
  const columns = sheet.names.map(
    (name, at): LoggerColumn => ({
      name,
      unit: units[at] ?? answers.unit ?? null,
      points: [],
    }),
  )
  const badLines: BadLine[] = []
  let [before, day] = [Number.NEGATIVE_INFINITY, answers.day ?? '']
  let lastClock = ''
  for (const line of sheet.lines) {
    const bad = (problem: string) => badLines.push({ lineNo: line.lineNo, text: line.text.slice(0, 80), problem })
    if (!line.time) {
      bad('no time in the first column: correct the line in the file, or leave it out')
      continue
    }
    if (!line.time.day && lastClock >= '18:00:00' && line.time.clock < '06:00:00') day = nextDay(day)
    const at = momentOfLogger(line.time, day, answers.dayOrder ?? null, answers.offset ?? 'Z')
    if (!at) {
      bad('there is no such time: correct it in the file')
      continue
    }
    if (instantOf(at) <= before) {
      bad('not later than the line before it: put the lines in the order of time, or take the second one out')
      continue
    }
    const faults = takeLine(line, at, columns, sheet)
    if (faults.length > 0) bad(faults.join('; '))
    before = instantOf(at)
    lastClock = line.time.clock
  }
  return { columns, badLines }
}

/** Take the cells of a line into the columns; what is wrong with those that could not be taken. */
function takeLine(line: LoggerLine, at: Moment, columns: readonly LoggerColumn[], sheet: LoggerSheet): string[] {
  if (line.cells.length > columns.length && line.cells.slice(columns.length).some((cell) => cell !== ''))
    return [
      `${line.cells.length} values where the header names ${columns.length}${sheet.separator === ',' ? ': a decimal comma needs ; or a tab between the values' : ': take the surplus ones out'}`,
    ]
  return columns.flatMap((column, place) => {
    const cell = line.cells[place] ?? ''
    const reading = column.unit ? readingOfCell(cell, column.unit, sheet.separator) : null
    if (reading) column.points.push({ at, reading })
    if (reading) return []
    return cell === ''
      ? [`no temperature under “${column.name}”: this time is left out for it`]
      : [`“${cell.slice(0, 24)}” under “${column.name}” is no temperature: correct it in the file, or it is left out`]
  })
}

/** A temperature as it stands in its cell; a decimal comma only where the comma does not separate. Null when it is no number. */
export function readingOfCell(cell: string, unit: LoggerUnit, separator: Separator): Measured | null {
  const own = UNIT.exec(cell)
  const letter = (own?.[1] ?? own?.[2])?.toUpperCase()
  if (letter && (letter === 'C') !== (unit === 'degC')) return null
  const text = cell.replace(/\s*(?:°|º|deg\.?\s*)\s*[CF]\s*$/i, '').trim()
  const plain = separator !== ',' && /^[+\-−]?\d+,\d+$/.test(text) ? text.replace(',', '.') : text
  const value = parseDecimal(plain)
  return value && text.length <= 24 ? { kind: 'number', ...value, unit, text } : null
}

function nextDay(day: string): string {
  return new Date(instantOf(`${day}T00:00:00Z`) + 86_400_000).toISOString().slice(0, 10)
}
