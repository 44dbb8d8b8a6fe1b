import { compareDecimals } from '../decimal'
import { ofKind } from './order-facts'
import type { RepairGround } from './repair-ground'
import type { AcceptanceState, IssueState, RepairStatus } from './repair-state'

/**
 * The one word of the register. Removed and abandoned end everything; a hold counts while the repair is not accepted; in service follows a handover
 * record and an issued dossier, else the acceptance is shown.
 */
export function repairStatus(
  ground: RepairGround,
  acceptance: AcceptanceState | null,
  issues: readonly IssueState[],
): RepairStatus {
  const governing = ground.records.filter((one) => one.overruledBy === null)
  if (governing.some((one) => one.record.type === 'removal')) return 'removed'
  const held = ofKind(ground.own, 'repair-held').at(-1)?.body.state
  if (held === 'abandoned') return 'abandoned'
  if (!acceptance)
    return held === 'on hold' || isStopped(ground, held) ? 'on hold' : governing.length > 0 ? 'in progress' : 'planned'
  if (acceptance.isOverdue) return 'overdue'
  const review = ofKind(ground.own, 'life-reviewed').at(-1)
  if (review && compareDecimals(review.body.lifeYears, acceptance.fact.body.lifeYears) > 0) return 'life extended'
  if (governing.some((one) => one.record.type === 'handover') && issues.length > 0) return 'in service'
  return acceptance.fact.body.kind === 'accepted under concession' ? 'accepted under concession' : 'accepted'
}

/** The last stop entry says stopped, and no resumption was entered as a decision after it. */
function isStopped(ground: RepairGround, held: string | undefined): boolean {
  const last = ground.own.findLast(
    (fact) => fact.kind === 'repair-held' || (fact.kind === 'recorded' && fact.body.record.type === 'stop'),
  )
  if (last?.kind !== 'recorded') return held === 'on hold'
  return last.body.record.type === 'stop' && last.body.record.what === 'stopped'
}
