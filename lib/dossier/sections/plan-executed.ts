import { PARTIES } from '@/lib/domain/roles'
import { type Block, type Cell, cell, head, mono, paragraph } from '../blocks'
import type { DossierContext } from '../dossier-context'
import { shortMoment } from '../records/short-moment'
import { attemptSign, releaseSign, stateSign } from './signs'

/** Section 6: the plan's points as they were done: who holds, witnesses, reviews or monitors, each attempt's verdict and state, releases and signatures. */
export function planExecutedBlocks(context: DossierContext): Block[] {
  const { state } = context
  const revisions = [
    ...state.specificationRevisions.map(
      (one) =>
        `Specification ${one.body.body.number} rev ${one.body.revision}, issued ${one.body.issuedOn}: ${one.body.changes}`,
    ),
    ...state.planRevisions.map(
      (one) =>
        `Plan ${one.body.body.number} rev ${one.body.revision}, issued ${one.body.issuedOn}: ${one.body.changes}`,
    ),
  ]
  const rows = state.points.flatMap((point) =>
    point.attempts.map((attempt): Cell[] => [
      head(attempt.attempt > 1 ? `${point.no}/${attempt.attempt}` : point.no),
      cell(point.plan.title),
      { spans: [mono(PARTIES.map((party) => point.participation[party] ?? '·').join(' '))] },
      { spans: [], sign: attemptSign(attempt) },
      { spans: [], sign: stateSign(attempt) },
      attempt.releases.length > 0
        ? {
            spans: attempt.releases.map((one, index) => ({
              text: `${index > 0 ? '\n' : ''}${one.fact.body.party}: ${surname(context.personName(one.fact.observedBy))} ${shortMoment(one.fact.observedAt)}${['valid', 'used'].includes(one.state) ? '' : `, ${releaseSign(one.state).text}`}`,
            })),
          }
        : cell('–'),
      attempt.signatures.length > 0
        ? {
            spans: attempt.signatures.map(({ fact, state: now }, index) => ({
              text: `${index > 0 ? '\n' : ''}${fact.body.meaning}: ${surname(fact.body.name)}${now === 'broken' ? ' (broken)' : ''}`,
            })),
          }
        : cell('–'),
    ]),
  )
  const self = state.points.filter((one) => one.plan.selfRelease).map((one) => one.no)
  return [
    ...revisions.map((text) => paragraph(text, 'soft')),
    ...(revisions.length === 0 ? [paragraph('No specification or plan revision was in force.', 'fail')] : []),
    {
      kind: 'table',
      sizePt: 6.8,
      columns: ['Point', 'Title', 'C Q K E', 'Verdict', 'State', 'Released by', 'Signed'].map((title) => ({ title })),
      rows,
    },
    paragraph('C crew, Q inspector, K client, E engineer. H hold, W witness, R review of record, M monitor.', 'soft'),
    ...(self.length > 0
      ? [paragraph(`Self-release was allowed by the plan at point ${self.join(', ')}.`, 'in-question')]
      : []),
    ...windows(context),
  ]
}

function windows({ state }: DossierContext): Block[] {
  if (state.windows.length === 0) return []
  const glyph = {
    met: 'pass',
    lapsed: 'lapsed',
    'not proven': 'not-proven',
    warning: 'open',
    running: 'open',
    'not started': 'later',
  } as const
  return [
    { kind: 'heading', text: 'Time windows, on observed times' },
    {
      kind: 'table',
      sizePt: 7.2,
      columns: ['Point', 'Window', 'Began', 'Ended', 'Bound', 'State', 'Clause'].map((title) => ({ title })),
      rows: state.windows.map((one) => [
        head(one.attempt > 1 ? `${one.point}/${one.attempt}` : one.point),
        cell(one.title),
        cell(one.startedAt ? shortMoment(one.startedAt) : '–'),
        cell(one.endedAt ? shortMoment(one.endedAt) : '–'),
        cell(one.endsAt ? shortMoment(one.endsAt) : '–'),
        { spans: [], sign: { glyph: glyph[one.state], text: one.state } },
        cell(one.clause),
      ]),
    },
  ]
}

/** Last part of a name, for a table where the whole name stands elsewhere. */
function surname(name: string): string {
  return name.split(' ').at(-1) ?? name
}
