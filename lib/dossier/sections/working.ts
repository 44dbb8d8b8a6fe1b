import type { FactId } from '@/lib/domain/facts/fact'
import type { AttemptState, PointState } from '@/lib/domain/fold/repair-state'
import type { CriterionResult } from '@/lib/domain/judge/verdict'
import type { WorkingInput } from '@/lib/domain/working/working'
import { workingOf } from '@/lib/domain/working/working-of'
import { type Block, type Cell, cell, head, mono, paragraph, plain } from '../blocks'
import type { DossierContext } from '../dossier-context'
import { groupsOf } from '../groups-of'
import { criterionCell } from './signs'

/** Section in which the working of every criterion is printed. */
export const WORKING_SECTION = 24

/** The annex of workings: for each judged criterion of each attempt formula, inputs with their facts, arithmetic, limit, decision rule and source. */
export function workingBlocks(context: DossierContext): Block[] {
  const attempts = context.state.points.flatMap((point) =>
    point.attempts.filter((attempt) => attempt.records.length > 0).map((attempt) => ({ point, attempt })),
  )
  const judged = attempts.filter(({ attempt }) => attempt.criteria.length > 0)
  if (judged.length === 0) return [paragraph('No criterion was judged yet.', 'soft')]
  return [
    paragraph(
      'How each figure and verdict came about, so that it can be done again by hand. A fact is named by the first sixteen figures of its digest, as beside each record in the sections before. Figures shown here are rounded; verdicts are taken on exact decimals, or on computed values that are never rounded towards a limit.',
      'soft',
    ),
    ...judged.flatMap(({ point, attempt }) => attemptWorkings(point, attempt, context)),
  ]
}

function attemptWorkings(point: PointState, attempt: AttemptState, context: DossierContext): Block[] {
  const title = `Point ${point.no}${point.attempts.length > 1 ? `, attempt ${attempt.attempt}` : ''}: ${point.plan.title}`
  return [
    { kind: 'heading', text: title },
    ...attempt.criteria.flatMap((result) => criterionWorking(result, attempt, context)),
  ]
}

function criterionWorking(result: CriterionResult, attempt: AttemptState, context: DossierContext): Block[] {
  const working = workingOf(result, {
    state: context.state,
    attempt,
    instruments: Object.fromEntries(context.instruments),
  })
  const { criterion } = result
  const rows: Cell[][] = [
    [head('Formula'), { spans: [plain(`${working.formula}.`), plain(` Source: ${working.source}.`, 'soft')] }],
    ...inputRows(working.inputs, context),
    ...(working.arithmetic.length > 0 ? [[head('Arithmetic'), { spans: [mono(working.arithmetic.join('; '))] }]] : []),
    [head('Found'), cell(result.found)],
    [
      head('Limit'),
      cell(
        [`${working.limit} (clause ${criterion.clause}, rev ${result.revision}).`, ...working.decision]
          .join(' ')
          .replace(' .', '.'),
      ),
    ],
    [head('Verdict'), criterionCell(result)],
  ]
  return [
    { kind: 'heading', text: `${criterion.id}  ${criterion.title}`, isMinor: true },
    {
      kind: 'table',
      isHeadless: true,
      isCompact: true,
      sizePt: 7,
      columns: [{ title: '' }, { title: '' }],
      rows,
    },
  ]
}

function digestOf(fact: FactId, context: DossierContext): string {
  const digest = context.sha256Of.get(fact)
  return digest ? digest.slice(0, 16) : fact.slice(-12)
}

const MANY_FACTS = 4

/** A row for each fact with what was taken from it; many facts that say one thing each stand in one row. */
function inputRows(inputs: readonly WorkingInput[], context: DossierContext): Cell[][] {
  const groups = [...groupsOf(inputs, (one) => one.fact)]
  const areBrief = groups.every(([, some]) => some.length === 1)
  if (groups.length >= MANY_FACTS && areBrief)
    return [
      [
        head('Facts'),
        cell(
          inputs
            .map((one) => `${inputText(one)}${one.fact === null ? '' : ` [${digestOf(one.fact, context)}]`}`)
            .join('; '),
        ),
      ],
    ]
  return groups.map(([fact, some]) => [
    head(fact === null ? 'Given' : `Fact ${digestOf(fact, context)}`),
    cell(some.map(inputText).join('; ')),
  ])
}

function inputText(one: WorkingInput): string {
  return `${one.label} ${one.value}`
}
