import type { PointNo } from '../specification'
import type { AttemptSlot, PointSlots } from './attempt-slots'
import { awaitedParties } from './attempt-states'
import { isSubmitted } from './missing-for-release'
import { isWaived } from './passed-holds'
import { holdParties, scopeCovers } from './release-states'
import type { RepairGround } from './repair-ground'
import type { AttemptState, PointState } from './repair-state'

/** Points with their current attempt, what blocks them and whom they await. An attempt with nothing recorded at a blocked point is closed. */
export function pointStates(
  ground: RepairGround,
  points: readonly PointSlots[],
  states: ReadonlyMap<AttemptSlot, AttemptState>,
): PointState[] {
  const stateOf = (slot: AttemptSlot): AttemptState => {
    const state = states.get(slot)
    if (!state) throw new Error(`no state for point ${slot.no} attempt ${slot.attempt}`)
    return state
  }
  return points.map((point): PointState => {
    const blockedBy = points
      .filter(
        (hold) =>
          hold.no !== point.no &&
          hold.plan.blocks.includes(point.no) &&
          !opens(ground, currentOf(hold), stateOf(currentOf(hold)), point.no),
      )
      .map((hold) => hold.no)
    const slot = currentOf(point)
    const attempts = point.attempts.map((one) => {
      const state = stateOf(one)
      return one === slot && state.state === 'open' && blockedBy.length > 0
        ? { ...state, state: 'closed' as const }
        : state
    })
    const current = attempts.at(-1)
    if (!current) throw new Error(`no attempt at point ${point.no}`)
    return {
      plan: point.plan,
      no: point.no,
      attempts,
      current,
      blockedBy,
      participation: point.plan.participation,
      awaiting: current.state === 'not applicable' ? [] : awaitedParties(ground, slot, current),
    }
  })
}

function currentOf(point: PointSlots): AttemptSlot {
  return point.attempts.at(-1) ?? point.attempts[0]
}

/**
 * Whether a point leaves a later one open: released by every holding party to it and still valid or used in time, neither withdrawn nor in
 * question; not applicable; conceded; or, where nobody holds it, submitted.
 */
function opens(ground: RepairGround, slot: AttemptSlot, state: AttemptState, later: PointNo): boolean {
  if (state.notApplicable || state.conceded) return true
  const parties = holdParties(slot.plan)
  if (parties.length === 0) return isSubmitted(slot)
  if (state.state === 'in question') return false
  return parties.every(
    (party) =>
      isWaived(ground, slot, party, ground.asOf) ||
      state.releases.some(
        (one) =>
          one.fact.body.party === party &&
          (one.state === 'valid' || one.state === 'used') &&
          scopeCovers(one.fact.body.scope, later) === 'yes',
      ),
  )
}
