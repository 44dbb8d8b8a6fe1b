import type { RecordState } from '@/lib/domain/fold/repair-state'
import { RECORD_TITLES } from '@/lib/domain/records/record-titles'
import { type Block, type Cell, cell, head, mono } from '../blocks'
import type { DossierContext } from '../dossier-context'
import { correctionsTable } from './corrections-table'
import { paperSpans } from './paper-spans'
import { isSingle, singlesOf } from './record-blocks'
import { shortMoment } from './short-moment'

const ACROSS = 6
const FULL_TIME = /^\d{4}-(\d{2}-\d{2} \d{2}:\d{2}(?::\d{2})?) [+-]\d{2}:\d{2}$/

/** Whether several records of one type read best side by side: each has only single values. */
export function isLog(records: readonly RecordState[]): boolean {
  return records.length > 1 && records.every((one) => isSingle(one.record))
}

/** Records of one type side by side, six to a table: each value as keyed, who and when, digest; corrections follow. */
export function recordLog(records: readonly RecordState[], context: DossierContext): Block[] {
  const [first] = records
  if (!first) return []
  const offset = first.fact.observedAt.slice(-6)
  const parts = Array.from({ length: Math.ceil(records.length / ACROSS) }, (_, at) =>
    records.slice(at * ACROSS, at * ACROSS + ACROSS),
  )
  return [
    {
      kind: 'heading',
      text: `${RECORD_TITLES[first.record.type] ?? first.record.type}: ${records.length} records, times at ${offset}`,
    },
    ...parts.map((part) => logTable(part, context)),
    ...records.flatMap((one) => correctionsTable(one, context)),
  ]
}

function logTable(part: readonly RecordState[], context: DossierContext): Block {
  const values = part.map((one) => new Map(singlesOf(one.record, context)))
  const fields = [...new Set(values.flatMap((one) => [...one.keys()]))]
  const row = (name: string, cells: readonly Cell[]): Cell[] => [head(name), ...cells]
  return {
    kind: 'table',
    isHeadless: true,
    sizePt: 7,
    columns: [{ title: '' }, ...part.map(() => ({ title: '' }))],
    rows: [
      ...fields.map((field) =>
        row(
          field,
          values.map((one) => cell((one.get(field) ?? '').replace(FULL_TIME, '$1'))),
        ),
      ),
      row(
        'Observed',
        part.map(({ fact }) => cell(`${shortMoment(fact.observedAt)}, ${context.personName(fact.observedBy)}`)),
      ),
      row(
        'Entered',
        part.map((one) => ({
          spans: [
            {
              text: `${shortMoment(one.fact.enteredAt)}, ${context.personName(one.fact.enteredBy)}, ${one.fact.device.id}`,
            },
            ...lateSpans(one, context),
          ],
        })),
      ),
      row(
        'Received',
        part.map(({ fact }) => cell(receivedText(context, fact.id))),
      ),
      row(
        'Digest',
        part.map(({ fact }) => ({ spans: [mono(context.sha256Of.get(fact.id)?.slice(0, 16) ?? 'unknown')] })),
      ),
      ...(part.some((one) => one.overruledBy !== null)
        ? [
            row(
              'Governs',
              part.map((one) => cell(one.overruledBy === null ? 'yes' : 'no, another record does')),
            ),
          ]
        : []),
    ],
  }
}

function receivedText(context: DossierContext, fact: RecordState['fact']['id']): string {
  const receipt = context.receipts.get(fact)
  return receipt ? shortMoment(receipt.receivedAt) : 'no receipt'
}

function lateSpans(one: RecordState, context: DossierContext): Cell['spans'] {
  const { late, fact } = one
  return [
    ...(late
      ? [
          {
            text: ` Late entry${fact.late ? `, ${fact.late.source}: ${fact.late.reason}` : ''}`,
            face: 'bold' as const,
            tone: 'in-question' as const,
          },
        ]
      : []),
    ...paperSpans(one, context),
  ]
}
