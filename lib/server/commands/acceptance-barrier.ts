import type { BodyOf } from '@/lib/domain/facts/fact-kinds'
import type { PointState, RepairState } from '@/lib/domain/fold/repair-state'
import { notDecided } from './decision-ground'
import type { Refusal } from './refusal'

/** The point at which the plan closes a repair: the one with the closing checklist. */
export function acceptancePoint(state: RepairState): PointState | null {
  return state.points.find((point) => point.plan.records.some((record) => record.type === 'checklist')) ?? null
}

/**
 * Why a repair cannot be accepted now, or null: it was accepted, points before are not released and valid, a nonconformance blocks, a concession is not named,
 * or conditions do not go with the kind of acceptance. An acceptance never turns a fail into a pass.
 * @source JOB.md section 2 point 19, section 3 rules 38 and 39, section 5
 */
export function acceptanceBarrier(state: RepairState, point: PointState, body: BodyOf<'accepted'>): Refusal | null {
  if (state.acceptance) return notDecided('accepted-already')
  if (point.blockedBy.length > 0) return notDecided('blocked', point.blockedBy)
  const earlier = state.points.filter((one) => one.no < point.no && one.no !== point.no)
  const open = earlier.filter((one) => !isPassed(one))
  if (open.length > 0) return notDecided('points-open', open.map((one) => `${one.no} ${one.plan.title}: ${one.current.state}, ${one.current.verdict}.`))
  const blocking = state.nonconformances.filter((one) => one.blocksAcceptance)
  if (blocking.length > 0) return notDecided('nonconformance-open', blocking.map((one) => one.number))
  if (point.current.records.every((one) => one.record.type !== 'checklist')) return notDecided('incomplete', ['Closing checklist missing.'])
  return kindBarrier(state, body)
}

function isPassed({ current, awaiting }: PointState): boolean {
  if (current.notApplicable || current.conceded !== null) return true
  if ((current.criteria.length > 0 && current.verdict !== 'pass') || current.questions.some((one) => one.decision === undefined)) return false
  return awaiting.length === 0 && (current.state === 'released' || current.state === 'submitted' || current.state === 'in progress')
}

function kindBarrier(state: RepairState, body: BodyOf<'accepted'>): Refusal | null {
  const conceded = state.points.flatMap((point) => point.attempts.flatMap((attempt) => (attempt.conceded ? [attempt.conceded] : [])))
  const isUnderConcession = body.kind === 'accepted under concession'
  if (conceded.length > 0 && !isUnderConcession) return notDecided('concession-not-named', [...new Set(conceded)])
  if (isUnderConcession && (!body.concession || !conceded.includes(body.concession))) return notDecided('no-such-concession')
  if ((body.kind === 'accepted on condition') !== body.conditions.length > 0) return notDecided('conditions-do-not-fit')
  return null
}
