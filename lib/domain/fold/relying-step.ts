import type { Moment } from '../time'
import type { AttemptSlot, PointSlots } from './attempt-slots'
import { attemptBeside } from './attempt-slots'
import type { RepairGround } from './repair-ground'

/** The step that uses releases up: for points before the wrap the whole wrap, for the wrap and after it the acceptance. */
export type RelyingStep = { from: Moment; to: Moment; kind: 'wrap' | 'acceptance' }

/** The relying step of a point, or null while it is not done. The wrap is done once every required record of it is there. */
export function relyingStep(
  ground: RepairGround,
  points: readonly PointSlots[],
  slot: AttemptSlot,
): RelyingStep | null {
  const wrap = points.find((point) =>
    point.plan.records.some((one) => one.type === 'ply' || one.type === 'tape-roll' || one.type === 'tape-wrap'),
  )
  if (wrap && slot.no < wrap.no) {
    const done = attemptBeside(wrap, slot)
    const isComplete = done.plan.records.every(
      (need) => done.governing.filter((one) => one.record.type === need.type).length >= need.atLeast,
    )
    return done.workFrom && done.workTo && isComplete ? { from: done.workFrom, to: done.workTo, kind: 'wrap' } : null
  }
  return ground.accepted
    ? { from: ground.accepted.observedAt, to: ground.accepted.observedAt, kind: 'acceptance' }
    : null
}
