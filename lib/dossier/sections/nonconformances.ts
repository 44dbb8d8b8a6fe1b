import { showDecimal } from '@/lib/domain/decimal'
import { streamName } from '@/lib/domain/facts/fact'
import type { Fact } from '@/lib/domain/facts/fact-kinds'
import type { NonconformanceState } from '@/lib/domain/fold/nonconformance-state'
import { showValue } from '@/lib/domain/records/show-value'
import { showMoment } from '@/lib/domain/time'
import { type Block, cell, head, paragraph, singleLine } from '../blocks'
import type { DossierContext } from '../dossier-context'

/** Section 17: nonconformances with their whole history, concessions, and queries to the engineer. */
export function nonconformanceBlocks(context: DossierContext): Block[] {
  const { state } = context
  return [
    ...(state.nonconformances.length === 0
      ? [paragraph('No nonconformance was raised.')]
      : state.nonconformances.flatMap((one) => oneBlocks(one, context))),
    { kind: 'heading', text: 'Technical queries' },
    ...(state.queries.length === 0 ? [paragraph('None raised.')] : [queriesTable(context)]),
  ]
}

function oneBlocks(one: NonconformanceState, context: DossierContext): Block[] {
  const { body } = one.raised
  const limits = one.proposal?.body.limits
  const conceded = one.proposal?.body.conceded
    ?.map((at) => `point ${at.point}/${at.attempt} stays as judged`)
    .join(', ')
  return [
    { kind: 'heading', text: `${one.number}: ${body.title} (${one.state})` },
    singleLine([
      ['What', body.what],
      ['Requirement', body.requirement],
      [
        'Raised',
        `${showMoment(one.raised.observedAt)}, ${context.personName(one.raised.observedBy)}${body.point ? `, at point ${body.point}` : ''}`,
      ],
      ['Cause class', body.causeClass],
      ['Disposition', one.proposal ? `${one.proposal.body.disposition}: ${one.proposal.body.what}` : 'none proposed'],
      [
        'Limits',
        limits
          ? [
              limits.lifeYears && `life ${showDecimal(limits.lifeYears)} yr`,
              limits.nextInspectionOn && `next inspection ${limits.nextInspectionOn}`,
              limits.other,
            ]
              .filter(Boolean)
              .join('; ')
          : 'none',
      ],
      ['Conceded', conceded ?? 'nothing'],
      ['Approval lacking', one.needsApproval.join(', ') || 'none'],
    ]),
    {
      kind: 'table',
      sizePt: 7.4,
      columns: ['When', 'Who', 'Step', 'Content'].map((title) => ({ title })),
      rows: one.facts.map((fact) => [
        cell(showMoment(fact.observedAt)),
        cell(context.personName(fact.observedBy)),
        head(fact.kind.replaceAll('-', ' ')),
        cell(contentOf(fact, context)),
      ]),
    },
    ...one.actions.map(({ fact, done }) =>
      paragraph(
        `Corrective action, ${context.personName(fact.body.owner)}, due ${fact.body.dueOn}: ${fact.body.what} ${done ? `Done ${showMoment(done.observedAt)}: ${done.body.evidence}` : 'NOT DONE.'}`,
      ),
    ),
  ]
}

function contentOf(fact: Fact, context: DossierContext): string {
  const skipped = new Set(['evidence', 'linked', 'proposal', 'action', 'number', 'title', 'blocks', 'repair'])
  const entries = Object.entries(fact.body).filter(([key]) => !skipped.has(key))
  return (
    entries
      .map(
        ([key, value]) =>
          `${key.replace(/([A-Z])/g, ' $1').toLowerCase()}: ${key === 'owner' ? context.personName(String(value)) : showValue(key, value, context)}`,
      )
      .join('; ') || '–'
  )
}

function queriesTable(context: DossierContext): Block {
  return {
    kind: 'table',
    columns: ['Query', 'Question', 'Answer', 'Binding'].map((title) => ({ title })),
    rows: context.state.queries.map(({ fact, answer }) => [
      head(fact.body.number),
      cell(`${fact.body.question} (${context.personName(fact.observedBy)}, ${showMoment(fact.observedAt)})`),
      cell(
        answer
          ? `${answer.body.answer}${answer.body.effect ? ` Effect: ${answer.body.effect}` : ''} (${context.personName(answer.observedBy)}, ${showMoment(answer.observedAt)})`
          : 'NOT ANSWERED',
        answer ? 'ink' : 'fail',
      ),
      cell(answer ? (answer.body.binding ? 'yes' : 'no') : '–'),
    ]),
  }
}

/** Section 18: notices to witnesses with what came of them, and waivers. */
export function noticeBlocks(context: DossierContext): Block[] {
  const { notices, waivers } = context.state
  const noticeRows = notices.map(({ fact: { body }, answer }) => [
    head(body.point),
    cell(`${context.personName(body.to)}, ${body.party}`),
    cell(body.how),
    cell(showMoment(body.sentAt)),
    cell(showMoment(body.for)),
    cell(
      answer
        ? `${answer.body.outcome}${answer.body.waitedMinutes ? `, waited ${showDecimal(answer.body.waitedMinutes)} min` : ''}${answer.body.clause ? `, ${answer.body.clause}` : ''}`
        : 'NO OUTCOME RECORDED',
      answer ? 'ink' : 'fail',
    ),
  ])
  const waiverRows = waivers.map(({ body, observedAt }) => [
    head(`${body.point}/${body.attempt}`),
    cell(`${context.personName(body.by)}, ${body.party}`),
    cell(showMoment(observedAt)),
    cell(`${body.writing}${body.sha256 ? `, file ${body.sha256.slice(0, 12)}` : ''}`),
  ])
  return [
    { kind: 'heading', text: 'Notices' },
    ...(noticeRows.length > 0
      ? [
          {
            kind: 'table',
            sizePt: 7.4,
            columns: ['Point', 'To', 'How', 'Sent', 'For', 'Outcome'].map((title) => ({ title })),
            rows: noticeRows,
          } as const,
        ]
      : [paragraph('No notice was sent.')]),
    { kind: 'heading', text: 'Waivers' },
    ...(waiverRows.length > 0
      ? [
          {
            kind: 'table',
            columns: ['Point', 'By', 'When', 'In writing'].map((title) => ({ title })),
            rows: waiverRows,
          } as const,
        ]
      : [paragraph('No right was waived.')]),
  ]
}

/** The decision of acceptance in full, for section 20. */
export function acceptanceBlocks(context: DossierContext): Block[] {
  const { acceptance } = context.state
  if (!acceptance) return [paragraph('Not accepted.', 'not-proven')]
  const { fact } = acceptance
  return [
    singleLine([
      ['Decision', fact.body.kind],
      ['By', `${context.personName(fact.observedBy)}, ${showMoment(fact.observedAt)}`],
      [
        'Life',
        `${showDecimal(fact.body.lifeYears)} yr from ${fact.body.lifeFrom}; in force ${acceptance.lifeYears} yr to ${acceptance.lifeEndsOn}`,
      ],
      ['Next inspection', acceptance.nextInspectionOn],
      ['Restrictions', fact.body.restrictions.join('; ') || 'none stated'],
      ['Concession', fact.body.concession ? streamName(fact.body.concession) : 'none'],
      [
        'Conditions',
        fact.body.conditions
          .map((one) => `${one.text}, ${context.personName(one.owner)}, due ${one.dueOn}`)
          .join('; ') || 'none',
      ],
      ['Open conditions', String(acceptance.openConditions.length)],
    ]),
  ]
}
