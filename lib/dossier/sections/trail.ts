import type { ConflictState } from '@/lib/domain/fold/conflict-state'
import { showMoment } from '@/lib/domain/time'
import { type Block, cell, head, mono } from '../blocks'
import type { DossierContext } from '../dossier-context'
import { shortMoment } from '../records/short-moment'
import { named } from './sign-tables'
import { toldUnasked, whatOf } from './told-unasked'

/** Section 21: what a reader is told without asking, conflicts, then every fact of the repair with observed, entered and received times and digest. */
export function trailBlocks(context: DossierContext): Block[] {
  const { state, receipts } = context
  const own = context.facts
    .filter((fact) => fact.stream === state.stream)
    .map((fact) => ({ fact, receipt: receipts.get(fact.id) }))
    .sort((a, b) => (a.receipt?.position ?? 0) - (b.receipt?.position ?? 0) || (a.fact.id < b.fact.id ? -1 : 1))
  return [
    ...toldUnasked(context),
    ...(state.conflicts.length > 0
      ? [
          { kind: 'heading', text: 'Conflicts' } as const,
          {
            kind: 'table',
            sizePt: 7.4,
            columns: ['Point', 'Conflict', 'Decided'].map((title) => ({ title })),
            rows: state.conflicts.map((one) => [
              head(one.point),
              cell(named(`${one.text}${factsOf(one, context)}`, context)),
              cell(
                one.resolved
                  ? `${context.personName(one.resolved.observedBy)}, ${showMoment(one.resolved.observedAt)}: ${one.resolved.kind === 'conflict-settled' ? `${one.resolved.body.ruling}. ` : ''}${one.resolved.body.reason}`
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
        cell(whatOf(fact)),
        cell(shortMoment(fact.observedAt)),
        cell(shortMoment(fact.enteredAt)),
        cell(receipt ? shortMoment(receipt.receivedAt) : '–'),
        cell(
          fact.enteredBy === fact.observedBy
            ? context.personName(fact.observedBy)
            : `${context.personName(fact.observedBy)}, entered by ${context.personName(fact.enteredBy)}`,
        ),
        { spans: [mono(context.sha256Of.get(fact.id)?.slice(0, 32) ?? '–')] },
      ]),
    },
  ]
}

/** The facts of a conflict, each with who stated it, when and on which device, so that a reader finds both sides in the dossier. */
function factsOf({ facts }: ConflictState, context: DossierContext): string {
  const told = context.facts
    .filter((fact) => facts.includes(fact.id))
    .map(
      (fact) =>
        `${whatOf(fact)}, ${context.personName(fact.observedBy)} ${shortMoment(fact.observedAt)}, ${deviceWords(fact.device.id)}`,
    )
  return told.length === 0 ? '' : ` (${told.join('; ')})`
}

/** A device by its name; an id that it gave itself says already that it is one. */
function deviceWords(id: string): string {
  return id.startsWith('device-') ? id : `device ${id}`
}
