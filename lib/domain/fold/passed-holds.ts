import type { FactId } from '../facts/fact'
import type { Party } from '../roles'
import type { PointNo } from '../specification'
import type { Moment } from '../time'
import { type AttemptSlot, attemptAt, attemptKey, type PointSlots } from './attempt-slots'
import { marksOf } from './marks-of'
import { ofKind } from './order-facts'
import { heldAt, holdParties, type ReleaseHistory, scopeCovers } from './release-states'
import type { RepairGround } from './repair-ground'
import { isAtOrBefore } from './work-span'

/** A hold that work went past: at which attempt of the hold, when, and by which record. */
export type PassedHold = { hold: PointNo; holdAttempt: number; at: Moment; by: FactId }

/**
 * Holds that were not released when the work of an attempt began, asked at the observed time of its first record: a release observed later never
 * cures it. A waiver in writing before the step, "not applicable" and a concession approved before the step count as leave.
 */
export function passedHolds(
  ground: RepairGround,
  points: readonly PointSlots[],
  slot: AttemptSlot,
  histories: ReadonlyMap<AttemptSlot, readonly ReleaseHistory[]>,
): PassedHold[] {
  const { workFrom: at, firstWork } = slot
  if (at === null || firstWork === null) return []
  return points
    .filter((hold) => hold.no !== slot.no)
    .flatMap((hold): PassedHold[] => {
      const holding = attemptAt(hold, at)
      const parties = holdParties(holding.plan)
      if (parties.length === 0 || !holding.plan.blocks.includes(slot.no) || hasLeave(ground, holding, at)) return []
      const releases = (histories.get(holding) ?? []).filter((one) => heldAt(one, at))
      const marks = marksOf(firstWork.record)
      const isReleasedBy = (party: Party) =>
        releases.some(
          (one) => one.fact.body.party === party && scopeCovers(one.fact.body.scope, slot.no, marks) !== 'no',
        ) || isWaived(ground, holding, party, at)
      return parties.every(isReleasedBy)
        ? []
        : [{ hold: hold.no, holdAttempt: holding.attempt, at, by: firstWork.fact.id }]
    })
}

function hasLeave(ground: RepairGround, holding: AttemptSlot, at: Moment): boolean {
  if (ofKind(holding.facts, 'marked-not-applicable').some((one) => isAtOrBefore(one.observedAt, at))) return true
  const conceded = ground.conceded.get(attemptKey(holding.no, holding.attempt))
  return conceded !== undefined && isAtOrBefore(conceded.at, at)
}

/** Whether a party gave its right at an attempt up in writing, before a moment. */
export function isWaived(ground: RepairGround, slot: AttemptSlot, party: Party, before: Moment): boolean {
  return ofKind(ground.own, 'waived').some(
    (one) =>
      one.body.point === slot.no &&
      one.body.attempt === slot.attempt &&
      one.body.party === party &&
      isAtOrBefore(one.observedAt, before),
  )
}
