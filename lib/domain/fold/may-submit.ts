import { done, type Result, refused } from '../result'
import type { PointNo } from '../specification'
import {
  type AttemptRefusal,
  blockingNonconformances,
  currentAttempt,
  type DecidingActor,
  type NotAllowed,
} from './decision'
import { missingRecords } from './missing-for-release'
import type { RepairState } from './repair-state'

export type OpenRefusal =
  | AttemptRefusal
  | { code: 'blocked'; by: PointNo[] }
  | { code: 'nonconformance-blocks'; numbers: string[] }
  | { code: 'on-hold' }
/** Whether a point is open for work now. Observations are kept all the same: this steers the screen, and what is begun against it is folded as passed. */
export function mayOpenPoint(state: RepairState, no: string): Result<true, OpenRefusal> {
  const point = state.points.find((one) => one.no === no)
  if (!point) return refused({ code: 'point-unknown', point: no })
  if (state.status === 'on hold' || state.status === 'abandoned') return refused({ code: 'on-hold' })
  const numbers = blockingNonconformances(state, no)
  if (numbers.length > 0) return refused({ code: 'nonconformance-blocks', numbers })
  return point.blockedBy.length > 0 ? refused({ code: 'blocked', by: point.blockedBy }) : done(true)
}

export type SubmitRefusal = AttemptRefusal | { code: 'not-applicable' } | { code: 'incomplete'; missing: string[] }
/** Whether an attempt may be submitted: every record and photo that the plan requires is there. A fail is submitted like a pass. */
export function maySubmit(state: RepairState, no: string, attempt: number): Result<true, SubmitRefusal> {
  const found = currentAttempt(state, no, attempt)
  if ('code' in found) return refused(found)
  const { point, current } = found
  if (current.notApplicable) return refused({ code: 'not-applicable' })
  const missing = missingRecords(
    point.plan,
    current.records.filter((one) => one.overruledBy === null),
    current.photos,
    current.photosToCome,
  )
  return missing.length > 0 ? refused({ code: 'incomplete', missing }) : done(true)
}

export type AttemptOpenRefusal =
  | { code: 'point-unknown'; point: string }
  | { code: 'attempt-taken'; point: PointNo; latest: number }
/** Whether a next attempt may be opened: its number is new at every point named. The earlier attempt stays beside it. */
export function mayOpenAttempt(
  state: RepairState,
  points: readonly string[],
  attempt: number,
): Result<true, AttemptOpenRefusal> {
  for (const no of points) {
    const point = state.points.find((one) => one.no === no)
    if (!point) return refused({ code: 'point-unknown', point: no })
    if (point.current.attempt >= attempt)
      return refused({ code: 'attempt-taken', point: point.no, latest: point.current.attempt })
  }
  return done(true)
}

export type NotApplicableRefusal =
  | AttemptRefusal
  | NotAllowed
  | { code: 'has-records' }
  | { code: 'client-agreement-missing' }
/** Whether an attempt may be marked not applicable: nothing recorded in it, and at a point of the client's with the client's written agreement. */
export function mayMarkNotApplicable(
  state: RepairState,
  no: string,
  attempt: number,
  actor: DecidingActor,
): Result<true, NotApplicableRefusal> {
  const found = currentAttempt(state, no, attempt)
  if ('code' in found) return refused(found)
  if (!actor.roles.some((role) => role === 'inspector' || role === 'engineer'))
    return refused({ code: 'not-allowed', needs: ['inspector', 'engineer'] })
  const { point, current } = found
  if (current.records.length > 0) return refused({ code: 'has-records' })
  const isClients = point.participation.client === 'H' || point.participation.client === 'W'
  const isAgreed =
    current.signatures.some(({ fact }) => fact.body.party === 'client' && fact.body.meaning === 'approved') ||
    state.waivers.some(({ body }) => body.party === 'client' && body.point === no && body.attempt === attempt)
  return isClients && !isAgreed ? refused({ code: 'client-agreement-missing' }) : done(true)
}
