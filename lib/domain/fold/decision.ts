import type { PersonId } from '../facts/fact'
import type { FactOf } from '../facts/fact-kinds'
import type { Party, Role } from '../roles'
import type { PointNo } from '../specification'
import { instantOf } from '../time'
import type { NonconformanceState } from './nonconformance-state'
import type { AttemptState, PointState, RepairState } from './repair-state'

/** Who decides: a person with roles in the project on the day; `approve` is the right that makes an inspector the quality manager. */
export type DecidingActor = { person: PersonId; roles: readonly Role[]; approve: boolean }

export type NotAllowed = { code: 'not-allowed'; needs: Role[] }
export type AttemptRefusal =
  | { code: 'point-unknown'; point: string }
  | { code: 'attempt-unknown'; point: PointNo; attempt: number }
  | { code: 'attempt-superseded'; point: PointNo; latest: number }

/** The role that decides for a party. */
export const ROLE_OF_PARTY: Record<Party, Role> = {
  crew: 'lead',
  inspector: 'inspector',
  client: 'client',
  engineer: 'engineer',
}

/** The current attempt of a point, or why it is not that. */
export function currentAttempt(
  state: RepairState,
  no: string,
  attempt: number,
): { point: PointState; current: AttemptState } | AttemptRefusal {
  const point = state.points.find((one) => one.no === no)
  if (!point) return { code: 'point-unknown', point: no }
  if (!point.attempts.some((one) => one.attempt === attempt))
    return { code: 'attempt-unknown', point: point.no, attempt }
  return point.current.attempt === attempt
    ? { point, current: point.current }
    : { code: 'attempt-superseded', point: point.no, latest: point.current.attempt }
}

/**
 * Open nonconformances that block a point, by number. One whose approved disposition opened the current attempt does not: that attempt is how it is
 * put right.
 */
export function blockingNonconformances(state: RepairState, no: string): string[] {
  const opened = state.points.find((one) => one.no === no)?.current.opened ?? null
  return state.nonconformances
    .filter(
      (one) =>
        one.isOpen &&
        one.raised.body.blocks.includes(no) &&
        (one.raised.body.repair ?? state.stream) === state.stream &&
        !isPutRightBy(one, opened),
    )
    .map((one) => one.number)
}

function isPutRightBy(one: NonconformanceState, opened: FactOf<'attempt-opened'> | null): boolean {
  const approved = one.approvals.at(-1)
  if (!opened || !approved || one.needsApproval.length > 0) return false
  return opened.body.nonconformance === one.stream || instantOf(opened.observedAt) >= instantOf(approved.observedAt)
}

/** Holds that work went past while this attempt of the hold was open: the release came too late for them. */
export function passesOf(
  point: PointState,
  attempt: AttemptState,
  state: RepairState,
): { at: string; point: PointNo }[] {
  return state.points.flatMap((later) =>
    later.attempts.flatMap((one) =>
      one.passedWithoutRelease
        .filter((passed) => passed.hold === point.no && isOpenAt(point, attempt, passed.at))
        .map((passed) => ({ at: passed.at, point: later.no })),
    ),
  )
}

function isOpenAt(point: PointState, attempt: AttemptState, at: string): boolean {
  const openAt = point.attempts.findLast(
    (one) =>
      one.attempt === point.attempts[0]?.attempt ||
      instantOf(one.opened?.observedAt ?? one.firstAt ?? at) <= instantOf(at),
  )
  return openAt?.attempt === attempt.attempt
}
