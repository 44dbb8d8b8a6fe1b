import type { StreamId } from '../facts/fact'
import type { Fact } from '../facts/fact-kinds'
import type { Moment } from '../time'
import { acceptanceState } from './acceptance-state'
import { attemptSlots } from './attempt-slots'
import { attemptStates } from './attempt-states'
import { conflictsOf } from './conflicts'
import { designAt, presentDefect } from './design-in-force'
import { dossierIssues, factsAfterIssue } from './dossier-issues'
import { revisionAt } from './fold-revisions'
import { judgeAttempts } from './judge-attempts'
import { missingList } from './missing-list'
import { ofKind } from './order-facts'
import { pointStates } from './point-states'
import { remarkableList } from './remarkable-list'
import { type FoldBeside, repairGround } from './repair-ground'
import type { RepairState, WindowState } from './repair-state'
import { repairStatus } from './repair-status'
import { usesOf } from './uses-of'

/** Version of this fold. A dossier states it; an older version stays in the code under its own name. */
export const RULES = 'fold 1'

/** A window of a closed attempt is shown once it has come to an end; it runs no longer. */
const HAS_ENDED: ReadonlySet<WindowState['state']> = new Set(['met', 'lapsed', 'not proven'])

/**
 * The state of a repair at a moment, from the facts of its stream and of every stream that it cites or that names it. A function of the set of
 * facts: order and repetition do not matter, and facts observed after `asOf` are not seen.
 * @throws RangeError when the repair was not opened by `asOf`
 */
export function foldRepair(
  facts: readonly Fact[],
  stream: StreamId,
  asOf: Moment,
  beside: FoldBeside = {},
): RepairState {
  const ground = repairGround(facts, stream, asOf, beside)
  const slots = attemptSlots(ground)
  const judged = judgeAttempts(ground, slots)
  const conflicts = conflictsOf(ground)
  const points = pointStates(ground, slots, attemptStates(ground, slots, judged, conflicts))
  const acceptance = acceptanceState(ground)
  const issues = dossierIssues(ground)
  const uses = usesOf(ground)
  const doubts = new Set(
    points.flatMap((point) => point.attempts.flatMap((attempt) => attempt.questions.map((one) => one.cause))),
  )
  const answers = ofKind(ground.own, 'notice-answered')
  const replies = ofKind(ground.own, 'query-answered')
  const notices = ofKind(ground.own, 'notice-sent').map((fact) => ({
    fact,
    answer: answers.findLast((one) => one.body.notice === fact.id) ?? null,
  }))
  const queries = ofKind(ground.own, 'query-raised').map((fact) => ({
    fact,
    answer: replies.findLast((one) => one.body.query === fact.id) ?? null,
  }))
  const specification = revisionAt(ground.specifications, ground.openUntil)
  const plan = revisionAt(ground.plans, ground.openUntil)
  return {
    rules: RULES,
    asOf,
    stream,
    number: ground.opened.body.number,
    opened: ground.opened,
    specification: specification && {
      stream: specification.stream,
      revision: specification.body.revision,
      body: specification.body.body,
      issued: specification,
    },
    specificationRevisions: ground.specifications,
    plan: plan && { stream: plan.stream, revision: plan.body.revision, body: plan.body.body },
    planRevisions: ground.plans,
    design: designAt(ground, null),
    defect: presentDefect(ground),
    points,
    windows: [...judged.values()].flatMap(({ slot, windows }) =>
      windows.filter((one) => slot.closedAt === null || HAS_ENDED.has(one.state)),
    ),
    nonconformances: ground.nonconformances,
    acceptance,
    status: repairStatus(ground, acceptance, issues),
    revisionDue: factsAfterIssue(ground, issues, uses, doubts).length > 0,
    issues,
    uses,
    missing: missingList(ground, { points, acceptance, conflicts, notices, queries, uses, slots }),
    conflicts,
    notices,
    waivers: ofKind(ground.own, 'waived'),
    queries,
    remarkable: remarkableList(ground, points, conflicts),
  }
}
