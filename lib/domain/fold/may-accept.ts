import type { BodyOf } from '../facts/fact-kinds'
import type { RecordType } from '../records/record'
import { done, type Result, refused } from '../result'
import type { PointNo } from '../specification'
import { isClosingPoint } from './closing-point'
import type { DecidingActor, NotAllowed } from './decision'
import { holdParties } from './release-states'
import type { PointState, RepairState } from './repair-state'

export type AcceptRefusal =
  | NotAllowed
  | { code: 'already-accepted' }
  | { code: 'on-hold' }
  | { code: 'nonconformance-open'; numbers: string[] }
  | { code: 'in-question'; points: PointNo[] }
  | { code: 'not-released'; points: PointNo[] }
  | { code: 'conflict-open'; points: PointNo[] }
  | { code: 'revision-undecided'; points: PointNo[] }
  | { code: 'concession-not-stated'; points: PointNo[] }
  | { code: 'concession-unknown' }

/** Records of points that come after acceptance: handover, in-service inspections, removal. */
const AFTER: ReadonlySet<RecordType> = new Set(['handover', 'in-service', 'removal'])

/**
 * Whether the repair may be accepted: no open nonconformance blocks it, nothing is in question or in conflict, every point is released and valid or
 * used in time, or conceded (then only under concession), or not applicable. A point that nobody holds must be submitted with a pass.
 */
export function mayAccept(
  state: RepairState,
  kind: BodyOf<'accepted'>['kind'],
  concession: string | undefined,
  actor: DecidingActor,
): Result<true, AcceptRefusal> {
  if (!actor.roles.includes('inspector')) return refused({ code: 'not-allowed', needs: ['inspector'] })
  if (state.acceptance) return refused({ code: 'already-accepted' })
  if (state.status === 'on hold' || state.status === 'abandoned') return refused({ code: 'on-hold' })
  const numbers = state.nonconformances.filter((one) => one.blocksAcceptance).map((one) => one.number)
  if (numbers.length > 0) return refused({ code: 'nonconformance-open', numbers })
  const points = state.points.filter((one) => !isAfterAcceptance(one))
  const inQuestion = points.filter((one) => one.current.state === 'in question')
  if (inQuestion.length > 0) return refused({ code: 'in-question', points: inQuestion.map((one) => one.no) })
  const conflicts = state.conflicts.filter((one) => one.resolved === null)
  if (conflicts.length > 0) return refused({ code: 'conflict-open', points: conflicts.map((one) => one.point) })
  const unreleased = points.filter((one) => !isSettled(one))
  if (unreleased.length > 0) return refused({ code: 'not-released', points: unreleased.map((one) => one.no) })
  const undecided = state.missing.flatMap((one) =>
    one.point !== null && one.text.endsWith('has not said whether it stands.') ? [one.point] : [],
  )
  if (undecided.length > 0) return refused({ code: 'revision-undecided', points: undecided })
  const conceded = points.filter((one) => one.current.conceded !== null)
  if (conceded.length > 0 && kind !== 'accepted under concession')
    return refused({ code: 'concession-not-stated', points: conceded.map((one) => one.no) })
  if (kind === 'accepted under concession' && !state.nonconformances.some((one) => one.stream === concession))
    return refused({ code: 'concession-unknown' })
  return done(true)
}

function isAfterAcceptance(point: PointState): boolean {
  return point.plan.records.length > 0 && point.plan.records.every((one) => AFTER.has(one.type))
}

/** The closing checklist's own point is released with the acceptance, so it need only be submitted. */
function isSettled(point: PointState): boolean {
  const { plan, current } = point
  if (current.state === 'not applicable' || current.state === 'released') return true
  if (current.conceded !== null) return current.state !== 'passed without release'
  const isChecklist = isClosingPoint(point)
  if (!isChecklist && holdParties(plan).length > 0) return false
  const isJudgedPass = current.criteria.length === 0 || current.verdict === 'pass'
  return (current.state === 'submitted' || (isChecklist && current.state === 'partly released')) && isJudgedPass
}
