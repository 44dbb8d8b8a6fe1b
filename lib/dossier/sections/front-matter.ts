import { showMoment } from '@/lib/domain/time'
import { type Block, cell, head, mono, paragraph } from '../blocks'
import type { DossierContext } from '../dossier-context'
import { named } from './sign-tables'

/** Section 1: every issue of this dossier, oldest first, with what changed and its digest; this one last. */
export function revisionHistory(
  { state, head: issue }: DossierContext,
  personName: (person: string) => string,
): Block[] {
  const rows = state.issues.map(({ fact, transmitted }) => [
    head(`rev ${fact.body.revision}`),
    cell(`${showMoment(fact.observedAt)}, ${personName(fact.observedBy)}`),
    cell(fact.body.purpose),
    cell(fact.body.changes.join('\n') || 'first issue'),
    { spans: [mono(`${fact.body.sha256.slice(0, 32)}\n${fact.body.sha256.slice(32)}`)] },
    cell(
      transmitted.map((one) => `${one.body.to}, ${one.body.how}, ${showMoment(one.body.at)}`).join('\n') ||
        'to nobody yet',
    ),
  ])
  const own =
    issue.kind === 'issue'
      ? [
          [
            head(`rev ${issue.revision}`),
            cell(`state as of ${showMoment(state.asOf)}`),
            cell(issue.purpose),
            cell(issue.changes.join('\n') || 'first issue'),
            cell('this file; its digest is recorded with its issue'),
            cell(''),
          ],
        ]
      : []
  const table: Block = {
    kind: 'table',
    columns: ['Revision', 'Issued', 'Purpose', 'What changed', 'SHA-256 of the file', 'Sent to'].map((title) => ({
      title,
    })),
    rows: [...rows, ...own],
    sizePt: 7,
  }
  const note =
    issue.kind === 'issue'
      ? `Revision ${issue.revision} supersedes ${state.issues.length > 0 ? 'all earlier revisions; they stay retrievable as issued' : 'nothing'}.`
      : 'This copy is for review. It is not issued, is not frozen and supersedes nothing.'
  return [
    ...(rows.length + own.length > 0 ? [table] : []),
    paragraph(note),
    ...(state.revisionDue && issue.kind !== 'issue'
      ? [paragraph('Facts have come since the last issue: a revision is due.', 'in-question')]
      : []),
  ]
}

/** Section 2: contents by sheet, then everything that is missing or not applicable. */
export function indexBlocks(
  context: DossierContext,
  entries: readonly { no: string; title: string; sheet: string; remark: string }[],
): Block[] {
  const { state } = context
  const inapplicable = state.points.flatMap((point) =>
    point.attempts.flatMap((one) =>
      one.notApplicable
        ? [
            [
              cell(point.no),
              cell(`${point.plan.title}: ${one.notApplicable.body.reason}`),
              cell(context.personName(one.notApplicable.observedBy)),
            ],
          ]
        : [],
    ),
  )
  return [
    {
      kind: 'table',
      columns: [{ title: 'Section' }, { title: 'Content' }, { title: 'Remark' }, { title: 'Sheet', align: 'right' }],
      rows: entries.map((one) => [
        head(one.no),
        cell(one.title),
        cell(one.remark, 'soft'),
        { ...cell(one.sheet), align: 'right' as const },
      ]),
      sizePt: 7,
    },
    {
      kind: 'heading',
      text: `Missing: ${state.missing.length === 0 ? 'nothing' : state.missing.length}; stated not applicable: ${inapplicable.length === 0 ? 'nothing' : inapplicable.length}`,
    },
    ...(state.missing.length > 0
      ? [
          {
            kind: 'table',
            columns: [{ title: 'Point' }, { title: 'What is missing' }],
            rows: state.missing.map((one) => [cell(one.point ?? '–'), cell(named(one.text, context))]),
            sizePt: 7.4,
          } as const,
        ]
      : []),
    ...(inapplicable.length > 0
      ? [
          { kind: 'heading', text: `Not applicable: ${inapplicable.length}` } as const,
          {
            kind: 'table',
            columns: [{ title: 'Point' }, { title: 'Reason' }, { title: 'Stated by' }],
            rows: inapplicable,
          } as const,
        ]
      : []),
  ]
}
