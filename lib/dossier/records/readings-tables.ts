import { fractionOf, plusFraction, showFraction } from '@/lib/domain/decimal'
import { metricBeside, withMetric } from '@/lib/domain/metric-beside'
import { type Reading, showReading, showUnit } from '@/lib/domain/reading'
import type { Grid, MarkedReading } from '@/lib/domain/records/common'
import type { RecordOf } from '@/lib/domain/records/record'
import { showKept } from '@/lib/domain/records/show-value'
import { showClock } from '@/lib/domain/time'
import { type Block, type Cell, cell, head, plain, strong } from '../blocks'

/** What marks a reading in print: whether it fails, and the value that a correction replaced. */
export type ReadingMarks = { isFailed: (mark: string) => boolean; was: ReadonlyMap<string, string> }

/** Unit of the readings where all share one. */
export function unitOf(readings: readonly MarkedReading[]): string {
  const units = new Set(readings.flatMap(({ reading }) => ('unit' in reading ? [showUnit(reading.unit)] : [])))
  return units.size === 1 ? ([...units][0] ?? '') : [...units].join(', ')
}

function readingCell(mark: string, reading: Reading | undefined, marks: ReadingMarks): Cell {
  const was = marks.was.get(mark)
  const old = was === undefined ? [] : [{ text: was, tone: 'soft' as const, isStruck: true }, plain(' ')]
  if (!reading) return { spans: [...old, plain('·', 'soft')], align: 'right' }
  const text =
    reading.kind === 'number' ? showReading(reading) : reading.kind === 'not-applicable' ? 'n/a' : showReading(reading)
  return { spans: [...old, ...(marks.isFailed(mark) ? [strong(`${text} ◆`, 'fail')] : [plain(text)])], align: 'right' }
}

/** Readings as a grid: clock positions down, stations across. Readings off the grid follow in a list. */
export function gridTable(grid: Grid, readings: readonly MarkedReading[], marks: ReadingMarks): Block[] {
  const byMark = new Map(readings.map((one) => [one.mark, one.reading]))
  const onGrid = new Set(grid.stations.flatMap((station) => grid.clocks.map((clock) => `${station.name}-${clock}`)))
  const rows = grid.clocks.map((clock) => [
    head(clock),
    ...grid.stations.map((station) =>
      readingCell(`${station.name}-${clock}`, byMark.get(`${station.name}-${clock}`), marks),
    ),
  ])
  const columns = [
    { title: 'clock' },
    ...grid.stations.map((station) => ({
      title: `${station.name} ${showReading(station.fromLeak)}`,
      align: 'right' as const,
    })),
  ]
  const others = readings.filter((one) => !onGrid.has(one.mark))
  return [
    { kind: 'table', columns, rows, isCompact: true },
    ...(others.length > 0 ? markTable(others, marks) : []),
    ...tapsTable(readings),
  ]
}

const PER_ROW = 10

/** Readings in the order taken, ten to a row, each under its mark. */
export function markTable(readings: readonly MarkedReading[], marks: ReadingMarks): Block[] {
  const across = Math.min(PER_ROW, readings.length)
  const parts = Array.from({ length: Math.ceil(readings.length / across) }, (_, at) =>
    readings.slice(at * across, at * across + across),
  )
  const rows = parts.flatMap((part) => [
    [head('mark'), ...part.map((one): Cell => ({ ...head(one.mark), align: 'right' }))],
    [head('reading'), ...part.map((one) => readingCell(one.mark, one.reading, marks))],
  ])
  return [
    {
      kind: 'table',
      isHeadless: true,
      isCompact: true,
      columns: Array.from({ length: across + 1 }, () => ({ title: '' })),
      rows,
    },
    ...tapsTable(readings),
  ]
}

function tapsTable(readings: readonly MarkedReading[]): Block[] {
  const detailed = readings.filter(
    (one) => one.taps !== undefined || one.at !== undefined || one.reading.kind === 'not-applicable',
  )
  if (detailed.length === 0) return []
  return [
    {
      kind: 'table',
      isCompact: true,
      columns: [{ title: 'Mark' }, { title: 'Reading' }, { title: 'Taps as taken' }, { title: 'Time' }],
      rows: detailed.map((one) => [
        head(one.mark),
        cell(showKept(one.reading)),
        cell(one.taps?.map(showReading).join('  ') ?? ''),
        cell(one.at ? showClock(one.at) : ''),
      ]),
    },
  ]
}

/** Heights before and after at each mark with their difference, exactly. */
export function fillerTable(record: RecordOf<'filler-thickness'>, marks: ReadingMarks): Block {
  const after = new Map(record.after.map((one) => [one.mark, one.reading]))
  const names = [...new Set([...record.before, ...record.after].map((one) => one.mark))]
  const before = new Map(record.before.map((one) => [one.mark, one.reading]))
  const rows = names.map((mark): Cell[] => {
    const [low, high] = [before.get(mark), after.get(mark)]
    const thickness =
      low?.kind === 'number' && high?.kind === 'number'
        ? showFraction(
            plusFraction(fractionOf(high), fractionOf({ digits: 0 - low.digits, scale: low.scale })),
            Math.max(low.scale, high.scale),
          )
        : '–'
    const failed = marks.isFailed(mark)
    return [
      head(mark === record.holeMark ? `${mark} (hole)` : mark),
      readingCell(`${mark}/before`, low, marks),
      readingCell(`${mark}/after`, high, marks),
      { spans: [failed ? strong(`${thickness} ◆`, 'fail') : strong(thickness)], align: 'right' },
    ]
  })
  return {
    kind: 'table',
    isCompact: true,
    columns: [
      { title: 'mark' },
      { title: 'height before', align: 'right' },
      { title: 'height after', align: 'right' },
      { title: 'filler, after − before', align: 'right' },
    ],
    rows,
  }
}

/** Readings of another unit again in metric, mark by mark; nothing where all are metric. */
export function metricLine(readings: readonly MarkedReading[]): Block[] {
  const beside = readings.flatMap(({ mark, reading }) => {
    const metric = metricBeside(reading)
    return metric ? [`${mark} ${metric}`] : []
  })
  return beside.length > 0
    ? [{ kind: 'paragraph', spans: [plain(`In metric: ${beside.join(', ')}`)], sizePt: 7.4 }]
    : []
}

/** The units of a series, as read. */
export function seriesUnit(series: readonly { reading: Reading }[]): string {
  return [...new Set(series.flatMap(({ reading }) => ('unit' in reading ? [showUnit(reading.unit)] : [])))].join(', ')
}

/** A series of readings with their times, several to a row. */
export function seriesTable(series: readonly { at: string; reading: Reading }[]): Block {
  const across = 6
  const rows = Array.from({ length: Math.ceil(series.length / across) }, (_, at) =>
    series
      .slice(at * across, at * across + across)
      .flatMap((one): Cell[] => [
        head(`${one.at.slice(5, 10)} ${showClock(one.at)}`),
        { ...cell(withMetric(showReading(one.reading), one.reading)), align: 'right' },
      ]),
  )
  return {
    kind: 'table',
    isHeadless: true,
    isCompact: true,
    columns: Array.from({ length: Math.min(across, series.length) * 2 }, () => ({ title: '' })),
    rows,
    sizePt: 7.4,
  }
}
