import type { RecordState } from '@/lib/domain/fold/repair-state'
import { showMoment } from '@/lib/domain/time'
import { type Block, type Cell, cell, mono, plain } from '../blocks'
import type { DossierContext } from '../dossier-context'
import { paperSpans } from './paper-spans'

/** When and by whom a record was observed, entered and received, from which device, late or not, and the digest of its fact. */
export function takenTable(one: RecordState, context: DossierContext): Block {
  const { fact } = one
  const receipt = context.receipts.get(fact.id)
  const offset = fact.device.clockOffsetMs
  const device = `${fact.device.id}${offset ? `, clock ${offset > 0 ? '+' : '−'}${Math.round(Math.abs(offset) / 1000)} s` : ''}`
  const late = one.late ? ` Late entry${fact.late ? `, ${fact.late.source}: ${fact.late.reason}` : ''}` : ''
  const entered: Cell = {
    spans: [
      plain(`${showMoment(fact.enteredAt)}, ${context.personName(fact.enteredBy)}, ${device}`),
      ...(late ? [{ text: late, face: 'bold' as const, tone: 'in-question' as const }] : []),
      ...paperSpans(one, context),
    ],
  }
  return {
    kind: 'table',
    sizePt: 7.2,
    columns: [{ title: 'Observed' }, { title: 'Entered' }, { title: 'Received' }, { title: 'Digest of the fact' }],
    rows: [
      [
        cell(`${showMoment(fact.observedAt)}, ${context.personName(fact.observedBy)}`),
        entered,
        cell(receipt ? showMoment(receipt.receivedAt) : 'no receipt'),
        { spans: [mono(context.sha256Of.get(fact.id)?.slice(0, 16) ?? 'unknown')] },
      ],
    ],
  }
}
