import type { PersonId } from '../facts/fact'
import type { FactOf } from '../facts/fact-kinds'
import { cycleOfBlocks, type Plan } from '../plan'
import { done, type Result, refused } from '../result'
import type { PointNo } from '../specification'
import type { DecidingActor, NotAllowed } from './decision'
import type { RevisionsState } from './fold-revisions'

export type IssueRefusal =
  | NotAllowed
  | { code: 'draft-missing' }
  | { code: 'revision-taken'; next: number }
  | { code: 'second-person-needed' }
type Second = { person: PersonId } | null

/** Whether a specification revision may be issued: client or engineer alone, the quality manager with a second person. */
export function mayIssueSpecification(
  state: RevisionsState<FactOf<'specification-draft-saved'>, FactOf<'specification-issued'>>,
  revision: number,
  actor: DecidingActor,
  second: Second,
): Result<true, IssueRefusal> {
  return mayIssue(state, revision, actor, second)
}

/** Whether a plan revision may be issued: as a specification; and its blocks form no cycle. */
export function mayIssuePlan(
  state: RevisionsState<FactOf<'plan-draft-saved'>, FactOf<'plan-issued'>>,
  revision: number,
  body: Plan,
  actor: DecidingActor,
  second: Second,
): Result<true, IssueRefusal | { code: 'blocks-form-a-cycle'; cycle: PointNo[] }> {
  const allowed = mayIssue(state, revision, actor, second)
  if (!allowed.ok) return allowed
  const cycle = cycleOfBlocks(body)
  return cycle ? refused({ code: 'blocks-form-a-cycle', cycle }) : done(true)
}

function mayIssue(
  state: { draft: unknown; nextRevision: number },
  revision: number,
  actor: DecidingActor,
  second: Second,
): Result<true, IssueRefusal> {
  if (state.draft === null) return refused({ code: 'draft-missing' })
  if (revision < state.nextRevision) return refused({ code: 'revision-taken', next: state.nextRevision })
  if (actor.roles.includes('client') || actor.roles.includes('engineer')) return done(true)
  if (!actor.roles.includes('inspector') || !actor.approve)
    return refused({ code: 'not-allowed', needs: ['client', 'engineer', 'inspector'] })
  return second === null || second.person === actor.person ? refused({ code: 'second-person-needed' }) : done(true)
}
