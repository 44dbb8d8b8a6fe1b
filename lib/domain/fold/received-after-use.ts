import type { FactOf } from '../facts/fact-kinds'
import { instantOf } from '../time'
import { type AttemptSlot, attemptBeside, type PointSlots } from './attempt-slots'
import type { RepairGround } from './repair-ground'

/** Whether a release was observed before a step that it opens but came to the store only after that step had begun. Asked only with receipts. */
export function isReceivedAfterUse(
  ground: RepairGround,
  points: readonly PointSlots[],
  slot: AttemptSlot,
  release: FactOf<'released'>,
): boolean {
  const receivedAt = ground.beside.receipts?.[release.id]?.receivedAt
  if (receivedAt === undefined) return false
  return points
    .filter((point) => slot.plan.blocks.includes(point.no))
    .some((point) => {
      const from = attemptBeside(point, slot).workFrom
      return (
        from !== null && instantOf(from) >= instantOf(release.observedAt) && instantOf(from) < instantOf(receivedAt)
      )
    })
}
