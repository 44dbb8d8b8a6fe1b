import type { AttemptState } from '@/lib/domain/fold/repair-state'
import { showFinding } from '@/lib/domain/judge/show-finding'
import type { Question } from '@/lib/domain/judge/verdict'
import { showMoment } from '@/lib/domain/time'
import { type Block, cell, paragraph, plain, strong } from '../blocks'
import type { DossierContext } from '../dossier-context'
import { named } from './sign-tables'
import { criterionCell } from './signs'
import { WORKING_SECTION } from './working'

/** Each criterion with its limit, what was found, the verdict and the clause at its revision. */
export function criteriaTable(attempt: AttemptState): Block[] {
  if (attempt.criteria.length === 0)
    return [paragraph('The specification has no criterion here: recorded, not judged.', 'soft')]
  const rows = attempt.criteria.map((one) => [
    cell(one.criterion.title),
    cell(one.limit),
    cell(one.found),
    criterionCell(one),
    cell(`${one.criterion.clause}, rev ${one.revision}`, 'soft'),
  ])
  return [
    {
      kind: 'table',
      columns: [
        { title: 'Criterion' },
        { title: 'Limit' },
        { title: 'Found' },
        { title: 'Verdict' },
        { title: 'Clause' },
      ],
      rows,
    },
  ]
}

/** Every finding as a sentence. */
export function findings(attempt: AttemptState, context: DossierContext): Block[] {
  const sentences = [...new Set(attempt.criteria.flatMap((one) => one.findings.map(showFinding)))]
  if (sentences.length === 0) return []
  return [
    { kind: 'heading', text: 'Findings' },
    { kind: 'paragraph', spans: [plain(sentences.map((one) => named(one, context)).join(' '))] },
  ]
}

/** What put the attempt in question, corrected figures and the decision. */
export function questions(attempt: AttemptState, context: DossierContext): Block[] {
  const all = [
    ...new Map(
      [...attempt.questions, ...attempt.criteria.flatMap((one) => one.questions)].map((one) => [
        `${one.cause} ${one.corrected?.found ?? ''}`,
        one,
      ]),
    ).values(),
  ]
  if (all.length === 0) return []
  return [
    { kind: 'heading', text: 'In question' },
    ...all.map(
      (one): Block => ({
        kind: 'paragraph',
        spans: [
          strong(`${one.causeKind}: ${context.streamTitle(one.stream)}`, 'in-question'),
          plain(`, since ${showMoment(one.since)}.${correctedText(one)}${decisionText(one, context)}`),
        ],
      }),
    ),
  ]
}

function correctedText(question: Question): string {
  return question.corrected
    ? ` With the known error taken off: ${question.corrected.found}, which would be ${question.corrected.verdict}.`
    : ''
}

function decisionText(question: Question, context: DossierContext): string {
  const fact = context.facts.find((one) => one.id === question.decision)
  if (!fact) return ' Not decided.'
  const reason = fact.kind === 'impact-decided' ? `${fact.body.decision}: ${fact.body.reason}` : fact.kind
  return ` Decided ${showMoment(fact.observedAt)} by ${context.personName(fact.observedBy)}: ${reason}.`
}

/** Where the working of the attempt's criteria is printed. */
export function working(attempt: AttemptState): Block[] {
  return attempt.criteria.length > 0
    ? [paragraph(`The working of each criterion is in section ${WORKING_SECTION}.`, 'soft')]
    : []
}
