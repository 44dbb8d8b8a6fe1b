import { showDecimal } from '@/lib/domain/decimal'
import type { RecordState, RepairState } from '@/lib/domain/fold/repair-state'
import type { Reading } from '@/lib/domain/reading'
import { readingOf } from '@/lib/domain/records/show-value'
import { csvLine } from '@/lib/server/commands/csv-line'

const HEADINGS = [
  'repair',
  'point',
  'attempt',
  'record',
  'where',
  'mark',
  'kind',
  'value',
  'unit',
  'as keyed',
  'reason',
  'instrument',
  'observed at',
  'observed by',
  'entered at',
  'entered by',
  'corrected',
  'overruled',
  'fact',
]

type Found = { where: string; mark: string; reading: Reading }

/** Every reading of every record of a repair as CSV, one line each, as it stands after corrections; a record that another overrules keeps its lines, marked. */
export function readingsCsv({ number, points }: RepairState): string {
  const lines = points.flatMap((point) =>
    point.attempts.flatMap((attempt) =>
      attempt.records.flatMap((record) =>
        readingsIn(record.record).map((found) => lineOf([number, point.no, attempt.attempt], record, found)),
      ),
    ),
  )
  return [csvLine(HEADINGS), ...lines].join('')
}

function lineOf(
  place: [string, string, number],
  { fact, record, corrections, overruledBy }: RecordState,
  found: Found,
): string {
  const { reading } = found
  return csvLine([
    ...place,
    record.type,
    found.where,
    found.mark,
    reading.kind,
    'digits' in reading ? showDecimal(reading) : null,
    'unit' in reading ? reading.unit : null,
    'text' in reading ? reading.text : null,
    'reason' in reading ? reading.reason : null,
    'instrument' in record && typeof record.instrument === 'string' ? record.instrument : null,
    fact.observedAt,
    fact.observedBy,
    fact.enteredAt,
    fact.enteredBy,
    corrections.length > 0 ? 'yes' : 'no',
    overruledBy === null ? 'no' : 'yes',
    fact.id,
  ])
}

/** Readings anywhere in a record with the path to each, and the mark beside it where there is one. */
function readingsIn(value: unknown, path: readonly string[] = [], mark = ''): Found[] {
  const reading = readingOf(value)
  if (reading) return [{ where: path.join('.'), mark, reading }]
  if (typeof value !== 'object' || value === null) return []
  const own = 'mark' in value && typeof value.mark === 'string' ? value.mark : mark
  return Object.entries(value).flatMap(([name, one]) => readingsIn(one, [...path, name], own))
}
