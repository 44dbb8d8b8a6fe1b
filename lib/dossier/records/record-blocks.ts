import type { AttemptState, RecordState } from '@/lib/domain/fold/repair-state'
import { readingFigures } from '@/lib/domain/judge/reading-figures'
import type { Grid, MarkedReading } from '@/lib/domain/records/common'
import { fieldLabel } from '@/lib/domain/records/field-labels'
import type { PointRecord } from '@/lib/domain/records/record'
import { RECORD_TITLES } from '@/lib/domain/records/record-titles'
import { isMarkedReadings, readingOf, showValue } from '@/lib/domain/records/show-value'
import { type Block, cell, plain, singleLine } from '../blocks'
import type { DossierContext } from '../dossier-context'
import { correctedReadings, correctionsTable } from './corrections-table'
import { FIELD_QUANTITIES } from './field-quantities'
import {
  fillerTable,
  gridTable,
  markTable,
  metricLine,
  type ReadingMarks,
  seriesTable,
  seriesUnit,
  unitOf,
} from './readings-tables'
import { takenTable } from './taken-table'

/** One record in full: who and when, every value as keyed with its unit, readings as taken, and each correction beside the old value. */
export function recordBlocks(one: RecordState, attempt: AttemptState, context: DossierContext, title = ''): Block[] {
  const { record } = one
  const heading = title || RECORD_TITLES[record.type] || record.type
  return [
    { kind: 'heading', text: one.overruledBy ? `${heading} (another record governs)` : heading },
    takenTable(one, context),
    ...fieldBlocks(record, readingMarks(one, attempt), context),
    ...correctionsTable(one, context),
  ]
}

/** The values of a record: single ones in a table of names, lists of readings and of lines in tables of their own. */
export function fieldBlocks(record: PointRecord, marks: ReadingMarksOf, context: DossierContext): Block[] {
  const singles: [string, string][] = []
  const tables: Block[] = []
  const grid = 'grid' in record ? record.grid : undefined
  for (const [field, value] of flattened(record)) {
    if (record.type === 'filler-thickness' && (field === 'before' || field === 'after')) {
      if (field === 'after')
        tables.push(
          named(`${fieldLabel('before')} and after, ${unitOf(record.after)}`),
          fillerTable(record, marks('after')),
        )
    } else if (isMarkedReadings(value))
      tables.push(
        named(`${field === 'readings' ? 'Readings as taken' : fieldLabel(field)}, ${unitOf(value)}`),
        ...(grid ? gridTable(grid as Grid, value, marks(field)) : markTable(value, marks(field))),
        ...figuresLine(`${record.type}.${field}`, value),
        ...metricLine(value),
      )
    else if (isList(value) && !isShort(value)) tables.push(...listBlocks(field, value, context))
    else singles.push([fieldLabel(field), showValue(field, value, context)])
  }
  return [...(singles.length > 0 ? [singleLine(singles)] : []), ...tables]
}

function figuresLine(place: string, readings: readonly MarkedReading[]): Block[] {
  const figures = readingFigures(FIELD_QUANTITIES[place]?.[0] ?? place, readings)
  return figures ? [{ kind: 'paragraph', spans: [plain(figures)] }] : []
}

/** Whether a record has only single values: nothing that needs a table of its own. */
export function isSingle(record: PointRecord): boolean {
  return flattened(record).every(([, value]) => !isMarkedReadings(value) && (!isList(value) || isShort(value)))
}

/** Names and values of a record that has only single ones. */
export function singlesOf(record: PointRecord, context: DossierContext): [string, string][] {
  return flattened(record).map(([field, value]) => [fieldLabel(field), showValue(field, value, context)])
}

type ReadingMarksOf = (field: string) => ReadingMarks

function readingMarks(one: RecordState, attempt: AttemptState): ReadingMarksOf {
  return (field) => {
    const quantities = FIELD_QUANTITIES[`${one.record.type}.${field}`] ?? []
    const judging = attempt.criteria.filter(
      ({ criterion: { rule }, verdict }) =>
        rule.kind === 'each' && quantities.includes(rule.quantity) && verdict === 'fail',
    )
    const failed = new Set(
      judging.flatMap((result) =>
        result.findings
          .filter((finding) => finding.facts.length === 0 || finding.facts.includes(one.fact.id))
          .map((finding) => finding.mark),
      ),
    )
    return { isFailed: (mark) => failed.has(mark), was: correctedReadings(one, field) }
  }
}

function flattened(record: PointRecord): [string, unknown][] {
  return Object.entries(record)
    .filter(([field]) => field !== 'type' && field !== 'grid')
    .flatMap(([field, value]): [string, unknown][] =>
      typeof value === 'object' && value !== null && !Array.isArray(value) && readingOf(value) === null
        ? Object.entries(value)
        : [[field, value]],
    )
}

function isList(value: unknown): value is Record<string, unknown>[] {
  return (
    Array.isArray(value) &&
    value.length > 0 &&
    value.every((one) => typeof one === 'object' && one !== null && !Array.isArray(one) && readingOf(one) === null)
  )
}

/** Few lines of at most two values read better in one cell than in a table. */
function isShort(list: readonly Record<string, unknown>[]): boolean {
  return list.length <= 6 && list.every((one) => Object.keys(one).length <= 2 && !('series' in one))
}

function named(text: string): Block {
  return { kind: 'heading', text, isMinor: true }
}

function listBlocks(field: string, list: readonly Record<string, unknown>[], context: DossierContext): Block[] {
  const keys = [...new Set(list.flatMap((one) => Object.keys(one)))]
  if (keys.length === 2 && keys.includes('at') && keys.includes('reading')) {
    const series = list as Parameters<typeof seriesTable>[0]
    return [named(`${fieldLabel(field)}, ${seriesUnit(series)} as read`), seriesTable(series)]
  }
  if (keys.includes('series'))
    return list.flatMap((one): Block[] => [
      named(
        `${fieldLabel(field)}: ${Object.entries(one)
          .filter(([key]) => key !== 'series')
          .map(([key, value]) => `${fieldLabel(key).toLowerCase()} ${showValue(key, value, context)}`)
          .join(', ')}, ${seriesUnit(one.series as Parameters<typeof seriesTable>[0])} as read`,
      ),
      seriesTable(one.series as Parameters<typeof seriesTable>[0]),
    ])
  const rows = list.map((one) =>
    keys.map((key) => cell(Object.hasOwn(one, key) ? showValue(key, one[key], context) : '')),
  )
  return [
    named(fieldLabel(field)),
    {
      kind: 'table',
      columns: keys.map((key) => ({ title: fieldLabel(key) })),
      rows,
      sizePt: keys.length > 7 ? 7 : 7.6,
    },
  ]
}
