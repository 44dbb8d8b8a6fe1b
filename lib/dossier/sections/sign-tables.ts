import type { AttemptState, SignatureState } from '@/lib/domain/fold/repair-state'
import { methodWords } from '@/lib/domain/signing/method-words'
import { showMoment } from '@/lib/domain/time'
import { type Block, cell, paragraph, plain, strong } from '../blocks'
import type { DossierContext } from '../dossier-context'
import { releaseSign } from './signs'

/** Signatures with their meaning, name, role, time and method. One that no longer covers what it signed says so. */
export function signaturesTable(signatures: readonly SignatureState[], context: DossierContext): Block[] {
  if (signatures.length === 0) return []
  const rows = signatures.map(({ fact, state, brokenBy }) => {
    const { meaning, name, role, party, method, covers } = fact.body
    const how = methodWords(method, context.personName)
    const broken = context.facts.find((one) => one.id === brokenBy)
    return [
      { spans: [strong(meaning)] },
      cell(name),
      cell(`${role}, for ${party}`),
      cell(showMoment(fact.observedAt)),
      cell(how),
      cell(
        `${covers.length} fact${covers.length === 1 ? '' : 's'}, ${covers
          .map((one) => one.sha256.slice(0, 8))
          .slice(0, 3)
          .join(' ')}${covers.length > 3 ? ' …' : ''}`,
      ),
      state === 'stands'
        ? { spans: [], sign: { glyph: 'pass' as const, text: 'stands' } }
        : {
            spans: broken ? [plain(`corrected ${showMoment(broken.observedAt)}`)] : [],
            sign: { glyph: 'lapsed' as const, text: 'broken' },
          },
    ]
  })
  return [
    { kind: 'heading', text: 'Signatures' },
    {
      kind: 'table',
      columns: ['Meaning', 'Name', 'Role, party', 'Signed', 'Method', 'Covers', 'State'].map((title) => ({ title })),
      rows,
      sizePt: 7.4,
    },
  ]
}

/** Releases with scope and history: one that fell stays, with when, why and by whom. */
export function releasesTable(attempt: AttemptState, context: DossierContext): Block[] {
  const rows = attempt.releases.map(({ fact, state, fell, receivedAfterUse }) => {
    const { scope, party, remark } = fact.body
    const covers =
      scope.kind === 'whole'
        ? 'whole point'
        : scope.kind === 'area'
          ? `area ${scope.area}${scope.marks ? ` (${scope.marks.length} marks)` : ''}`
          : `up to ${scope.step}${scope.untilPoint ? `, until point ${scope.untilPoint}` : ''}`
    const history = [
      fell ? `${showMoment(fell.at)}: ${fell.cause}${fell.by ? `, ${context.personName(fell.by)}` : ''}` : '',
      receivedAfterUse ? 'received after the step that relied on it' : '',
      remark ?? '',
    ]
      .filter(Boolean)
      .join('; ')
    return [
      cell(party),
      cell(covers),
      cell(context.personName(fact.observedBy)),
      cell(showMoment(fact.observedAt)),
      { spans: [], sign: releaseSign(state) },
      cell(history),
    ]
  })
  const refusals = attempt.refusals.map((fact) => [
    cell(fact.body.party),
    cell('refused'),
    cell(context.personName(fact.observedBy)),
    cell(showMoment(fact.observedAt)),
    { spans: [], sign: { glyph: 'fail' as const, text: 'refused' } },
    cell(fact.body.reason),
  ])
  const all = [...rows, ...refusals]
  if (all.length === 0) return []
  return [
    { kind: 'heading', text: 'Releases and refusals' },
    {
      kind: 'table',
      columns: ['Party', 'Scope', 'By', 'When', 'State now', 'What became of it'].map((title) => ({ title })),
      rows: all,
      sizePt: 7.4,
    },
  ]
}

/** What an attempt still lacks, and holds that were passed before their release. */
export function lacksOf(attempt: AttemptState, context: DossierContext): Block[] {
  const passed = attempt.passedWithoutRelease.map(
    (one) =>
      `Begun ${showMoment(one.at)} although the hold of point ${one.hold} was not released then. A release after the fact does not cure it.`,
  )
  const isNotDue = attempt.records.length === 0 && !context.state.missing.some((one) => one.point === attempt.point)
  const lacks = isNotDue || attempt.state === 'superseded' || attempt.state === 'released' ? [] : attempt.missing
  if (isNotDue) return [paragraph('Nothing is due here yet.', 'soft')]
  return [
    ...passed.map((text) => paragraph(text, 'fail')),
    ...(lacks.length > 0
      ? [
          { kind: 'heading', text: 'Missing here' } as const,
          paragraph(lacks.map((text) => named(text, context)).join(' ')),
        ]
      : []),
  ]
}

/** A sentence with ids of known persons replaced by their names. */
export function named(text: string, context: DossierContext): string {
  return [...context.persons.values()]
    .filter((person) => person.id.length > 4)
    .reduce(
      (sentence, person) =>
        sentence.replace(new RegExp(`(?<![\\w.:-])${person.id.replace(/[.]/g, '\\.')}(?![\\w-])`, 'g'), person.name),
      text,
    )
}
