import type { PersonId } from '@/lib/domain/facts/fact'
import type { BodyOf } from '@/lib/domain/facts/fact-kinds'
import type { AttemptState, PointState, RepairState } from '@/lib/domain/fold/repair-state'
import { currentAttempt, notDecided } from './decision-ground'
import type { Refusal } from './refusal'

/**
 * Why a person may not release a point now, or null: the party holds no such point, the attempt is not the current one, it is blocked, over or was passed
 * without release, something is missing, or the work is the person's own. A concession stands in for a pass and turns no fail into one; an area alone may
 * be released while its point is not proven, never while it fails.
 * @source JOB.md section 3, rules 13 to 15; section 2
 */
export function releaseBarrier(state: RepairState, body: BodyOf<'released'>, releaser: PersonId): Refusal | null {
  const at = currentAttempt(state, body.point, body.attempt)
  if (!at.ok) return at.error
  const { point, current } = at.value
  if (point.participation[body.party] !== 'H') return notDecided('party-holds-no-such-point')
  if (current.state === 'passed without release') return notDecided('passed-without-release', current.passedWithoutRelease.map((one) => `${one.hold} at ${one.at}`))
  if (current.state === 'not applicable' || current.state === 'superseded') return notDecided('attempt-is-over', [current.state])
  if (point.blockedBy.length > 0) return notDecided('blocked', point.blockedBy)
  return ownWork(point, current, releaser) ?? lacking(current, body)
}

function ownWork(point: PointState, current: AttemptState, releaser: PersonId): Refusal | null {
  if (point.plan.selfRelease) return null
  const isDoer = current.signatures.some(({ fact }) => fact.body.meaning === 'performed' && fact.observedBy === releaser)
  return isDoer ? notDecided('own-work') : null
}

function lacking(current: AttemptState, body: BodyOf<'released'>): Refusal | null {
  if (body.scope.kind === 'area' && current.submitted !== null && current.verdict !== 'fail' && current.records.length > 0) return null
  return current.missing.length > 0 ? notDecided('incomplete', current.missing) : null
}
