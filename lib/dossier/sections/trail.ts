import { showValue } from '@/lib/domain/records/show-value'
import { showMoment } from '@/lib/domain/time'
import { type Block, cell, head, mono, paragraph } from '../blocks'
import type { DossierContext } from '../dossier-context'
import { shortMoment } from '../records/short-moment'
import { named } from './sign-tables'

/** Section 21: what a reader is told without asking, conflicts, then every fact of the repair with observed, entered and received times and digest. */
export function trailBlocks(context: DossierContext): Block[] {
  const { state, receipts } = context
  const own = context.facts
    .filter((fact) => fact.stream === state.stream)
    .map((fact) => ({ fact, receipt: receipts.get(fact.id) }))
    .sort((a, b) => (a.receipt?.position ?? 0) - (b.receipt?.position ?? 0) || (a.fact.id < b.fact.id ? -1 : 1))
  return [
    { kind: 'heading', text: 'Late entries, corrections, clock faults, falls and conflicts' },
    ...(state.remarkable.length > 0
      ? [
          {
            kind: 'table',
            sizePt: 7.4,
            columns: [{ title: 'Observed' }, { title: 'What' }],
            rows: state.remarkable.map((one) => [
              cell(showMoment(one.at)),
              cell(named(correctionText(one.fact, one.text, context), context)),
            ]),
          } as const,
        ]
      : [paragraph('None.')]),
    ...(state.conflicts.length > 0
      ? [
          { kind: 'heading', text: 'Conflicts' } as const,
          {
            kind: 'table',
            sizePt: 7.4,
            columns: ['Point', 'Conflict', 'Decided'].map((title) => ({ title })),
            rows: state.conflicts.map((one) => [
              head(one.point),
              cell(named(one.text, context)),
              cell(
                one.resolved
                  ? `${context.personName(one.resolved.observedBy)}, ${showMoment(one.resolved.observedAt)}: ${one.resolved.body.reason}`
                  : 'NOT DECIDED',
                one.resolved ? 'ink' : 'fail',
              ),
            ]),
          } as const,
        ]
      : []),
    {
      kind: 'heading',
      text: `All ${own.length} facts of this repair, in the order received (times at ${state.asOf.slice(-6)})`,
    },
    {
      kind: 'table',
      sizePt: 6.3,
      columns: [
        { title: 'No.' },
        { title: 'Kind' },
        { title: 'Observed' },
        { title: 'Entered' },
        { title: 'Received' },
        { title: 'By' },
        { title: 'SHA-256, first half' },
      ],
      rows: own.map(({ fact, receipt }) => [
        cell(String(receipt?.position ?? '–')),
        cell(
          `${fact.kind.replaceAll('-', ' ')}${'point' in fact.body && fact.body.point ? ` ${fact.body.point}${'attempt' in fact.body ? `/${fact.body.attempt}` : ''}` : ''}`,
        ),
        cell(shortMoment(fact.observedAt)),
        cell(shortMoment(fact.enteredAt)),
        cell(receipt ? shortMoment(receipt.receivedAt) : '–'),
        cell(context.personName(fact.observedBy)),
        { spans: [mono(context.sha256Of.get(fact.id)?.slice(0, 32) ?? '–')] },
      ]),
    },
  ]
}

/** A correction with its readings in words; any other text as it is. */
function correctionText(id: string, text: string, context: DossierContext): string {
  const fact = context.facts.find((one) => one.id === id)
  if (fact?.kind !== 'corrected' || !text.startsWith('Corrected')) return text
  const show = (value: unknown): string => (value === null ? 'nothing' : showValue('', value, context))
  return `Corrected by ${context.personName(fact.observedBy)}: ${fact.body.changes.map((one) => `from ${show(one.from)} to ${show(one.to)}`).join('; ')}. ${fact.body.reason}.`
}
