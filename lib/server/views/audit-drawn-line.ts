import type { PersonId } from '@/lib/domain/facts/fact'
import type { FactOf } from '@/lib/domain/facts/fact-kinds'
import type { RepairState } from '@/lib/domain/fold/repair-state'
import { fieldLabel } from '@/lib/domain/records/field-labels'
import { RECORD_TITLES } from '@/lib/domain/records/record-titles'
import { readingOf, showKept } from '@/lib/domain/records/show-value'
import type { Moment } from '@/lib/domain/time'
import { leafOfRow } from '@/lib/server/log/leaf-of-row'
import type { ChainStep } from './audit-chain-step'
import { textOf } from './audit-head-view'
import { lateWords } from './audit-line'
import type { DrawnReading } from './audit-population'
import { type RecordPath, valueAt } from './audit-readings'

/** Where a fact stands in the log: what a browser checks together with the bytes. */
export type PlaceInLog = { index: number; size: number; root: string; proof: string[] }

/** One reading drawn: as keyed, whose record it is of, when and by whom, its place in the log, and what stands behind it. */
export type DrawnLine = {
  number: number
  fact: string
  sha256: string
  bytes: string
  leaf: string
  inLog: PlaceInLog
  repair: string
  line: string
  point: string
  pointTitle: string
  attempt: number
  record: string
  place: string
  keyed: string
  corrected: string | null
  isOverruled: boolean
  observedAt: Moment
  enteredAt: Moment
  receivedAt: string
  receivedBy: string
  enteredBy: string
  device: string
  clockOffsetMs: number | null
  late: string | null
  chain: ChainStep[]
}

/** What a drawn reading says of itself, without its place in the log and its chain. */
export function drawnLine(
  tenant: string,
  { number, row, fact, reading }: DrawnReading,
  state: RepairState | null,
  names: Readonly<Record<PersonId, string>>,
): Omit<DrawnLine, 'inLog' | 'chain'> {
  const { point, attempt, record } = fact.body
  const planned = state?.points.find((one) => one.no === point)
  const standing = planned?.attempts
    .find((one) => one.attempt === attempt)
    ?.records.find((one) => one.fact.id === fact.id)
  const name = (person: string) => names[person as PersonId] ?? person
  return {
    number,
    fact: fact.id,
    sha256: row.sha256,
    bytes: textOf(row.bytes),
    leaf: textOf(leafOfRow(tenant, row)),
    repair: fact.stream.slice('repair:'.length),
    line: state ? `${state.opened.body.line} ${state.opened.body.lineTitle}` : '',
    point,
    pointTitle: planned?.plan.title ?? '',
    attempt,
    record: RECORD_TITLES[record.type] ?? record.type,
    place: placeWords(fact, reading.path),
    keyed: showKept(reading.value),
    corrected: standing ? correctedWords(standing.record, reading.path, showKept(reading.value)) : null,
    isOverruled: standing?.overruledBy != null,
    observedAt: fact.observedAt,
    enteredAt: fact.enteredAt,
    receivedAt: row.receivedAt,
    receivedBy: name(row.receivedBy),
    enteredBy: name(fact.enteredBy),
    device: fact.device.id,
    clockOffsetMs: fact.device.clockOffsetMs,
    late: lateWords(fact),
  }
}

/** A path in words: `Readings, C-6`; a line of a list by its mark, place or clock, else by its number. */
function placeWords(fact: FactOf<'recorded'>, path: RecordPath): string {
  const words = path.flatMap((part, at): string[] => {
    if (typeof part === 'number') {
      const line = valueAt(fact.body.record, path.slice(0, at + 1))
      const told = ['mark', 'place', 'clock', 'at']
        .map((name) => valueAt(line, [name]))
        .find((one) => typeof one === 'string')
      return [typeof told === 'string' ? told : `no. ${part + 1}`]
    }
    return ['reading', 'value'].includes(part) ? [] : [fieldLabel(part)]
  })
  return words.join(', ')
}

/** What stands at the place after corrections, where that is another value. */
function correctedWords(record: unknown, path: RecordPath, keyed: string): string | null {
  const now = readingOf(valueAt(record, path))
  const words = now ? showKept(now) : 'taken out'
  return words === keyed ? null : words
}
