import { isLoggerDay, type LoggerTime, parseLoggerTime } from './logger-time'

export type Separator = ',' | ';' | '\t'
export type LoggerLine = { lineNo: number; text: string; time: LoggerTime | null; cells: string[] }
export type LoggerSheet = {
  separator: Separator
  /** Names of the columns after the time, from the header; `column 2` where there is none. */
  names: string[]
  /** Lines from the first that starts with a time. */
  lines: LoggerLine[]
}

/** Cut a logger's text into lines and cells: the separator is the one that most lines hold; a date and a time in two columns are one time. Null when no line starts with a time. */
export function cutLoggerText(text: string): LoggerSheet | null {
  const raw = text
    .replace(/^\uFEFF/, '')
    .split(/\r\n|\n|\r/)
    .map((line, at) => ({ lineNo: at + 1, text: line }))
    .filter((line) => line.text.trim() !== '')
  const separator = separatorOf(raw.map((line) => line.text))
  if (!separator) return null
  const cut = raw.map((line) => ({ ...line, cells: cellsOf(line.text, separator) }))
  const first = cut.findIndex(({ cells }) => timeOf(cells) !== null)
  const start = cut[first]
  if (!start) return null
  const isSplit = isLoggerDay(start.cells[0] ?? '')
  const width = isSplit ? 2 : 1
  const header = first > 0 ? (cut[first - 1]?.cells ?? []) : []
  const most = Math.max(...cut.slice(first).map(({ cells }) => cells.length))
  const columns = header.length > 1 ? header.length : most
  return {
    separator,
    names: Array.from({ length: Math.max(0, columns - width) }, (_, at) => {
      const named = header.length > 1 ? header[at + width]?.trim() : ''
      return named ? named.slice(0, 60) : `column ${at + width + 1}`
    }),
    lines: cut.slice(first).map(({ lineNo, text: whole, cells }) => ({
      lineNo,
      text: whole,
      time: timeOf(cells),
      cells: cells.slice(width),
    })),
  }
}

function timeOf(cells: readonly string[]): LoggerTime | null {
  const [first = '', second = ''] = cells
  return parseLoggerTime(isLoggerDay(first) ? `${first} ${second}` : first)
}

function separatorOf(lines: readonly string[]): Separator | null {
  const sample = lines.slice(0, 200)
  const share = (mark: Separator): number => sample.filter((line) => line.includes(mark)).length
  const by = (['\t', ';', ','] as const).map((mark) => ({ mark, lines: share(mark) }))
  const best = by.reduce((most, one) => (one.lines > most.lines ? one : most))
  return best.lines > 0 ? best.mark : null
}

/** Cells of a line; a quoted cell may hold the separator, two quotes in it are one. */
function cellsOf(line: string, separator: Separator): string[] {
  const cells: string[] = []
  let [cell, isQuoted] = ['', false]
  for (let at = 0; at < line.length; at += 1) {
    const sign = line[at] ?? ''
    if (sign === '"') {
      if (isQuoted && line[at + 1] === '"') {
        cell += '"'
        at += 1
      } else isQuoted = !isQuoted
    } else if (sign === separator && !isQuoted) {
      cells.push(cell.trim())
      cell = ''
    } else cell += sign
  }
  return [...cells, cell.trim()]
}
