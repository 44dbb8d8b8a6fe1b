import { done, type Result, refused } from '@/lib/domain/result'
import type { LoggerAnswers, LoggerPoint, LoggerSeries } from './logger-series'

/** Where a column goes: a clock position, the ambient, or nowhere. Empty while not chosen. */
export type ColumnUse = string

type Held = { probes: unknown; ambient: unknown }
type Taken = { probes: unknown[]; ambient: LoggerPoint[] | null }

/**
 * The probes of a form with the chosen columns of a logger's file. What was keyed stays as it is; a probe that is still wholly empty gives its place to the first
 * column. Refuses `ambient-present` when ambient temperatures are there already, and a file's would replace them.
 */
export function withColumns(
  held: Held,
  series: LoggerSeries,
  uses: Readonly<Record<number, ColumnUse>>,
): Result<Taken, { code: 'ambient-present' }> {
  const keyed = (Array.isArray(held.probes) ? held.probes : []).filter((one) => !isBlank(one))
  const chosen = series.columns.flatMap((column, place) => {
    const use = uses[place] ?? ''
    return use === '' || use === 'leave out' || column.points.length === 0 ? [] : [{ column, use }]
  })
  const ambient = chosen.find((one) => one.use === 'ambient')?.column.points ?? null
  if (ambient && Array.isArray(held.ambient) && held.ambient.length > 0) return refused({ code: 'ambient-present' })
  const probes = chosen
    .filter((one) => one.use !== 'ambient')
    .map(({ column, use }) => ({ place: column.name, clock: use, series: column.points }))
  return done({ probes: [...keyed, ...probes], ambient })
}

/** Whether nothing at all was keyed into a part of a form. */
function isBlank(value: unknown): boolean {
  if (value === undefined || value === null || value === '') return true
  if (Array.isArray(value)) return value.every(isBlank)
  return typeof value === 'object' && Object.values(value).every(isBlank)
}

const REMARK_MOST = 1000

/** The remark of the form with where the temperatures came from: the file, its lines, and what the person answered for it. */
export function loggerRemark(before: unknown, fileName: string, series: LoggerSeries, answers: LoggerAnswers): string {
  const told = [
    ...(answers.offset ? [`clock ${answers.offset === 'Z' ? 'UTC' : `UTC${answers.offset}`} as told`] : []),
    ...(answers.day ? [`first day ${answers.day} as told`] : []),
    ...(answers.dayOrder ? [`days ${answers.dayOrder} as told`] : []),
    ...(answers.unit ? [`unit ${answers.unit === 'degC' ? '°C' : '°F'} as told`] : []),
    ...(series.badLines.length > 0
      ? [
          `lines not or not wholly taken: ${series.badLines
            .map((line) => line.lineNo)
            .slice(0, 20)
            .join(', ')}`,
        ]
      : []),
  ]
  const text = `From logger file ${fileName.slice(0, 80)}, ${series.lineCount} lines${told.length > 0 ? `; ${told.join('; ')}` : ''}.`
  const kept = typeof before === 'string' && before.trim() !== '' ? `${before.trim()} ` : ''
  return `${kept}${text}`.slice(0, REMARK_MOST)
}
