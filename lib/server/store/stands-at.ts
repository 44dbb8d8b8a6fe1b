import type { Fact } from '@/lib/domain/facts/fact-kinds'
import type { RepairState } from '@/lib/domain/fold/repair-state'
import { dayOf, instantOf, type Moment } from '@/lib/domain/time'
import { rowChangesAt } from './repair-row'

const OLDEST_MS = 60_000

/**
 * Whether a state folded a little earlier from the same facts still tells how a repair stands: less than a minute has passed, and in it no window
 * ended, no day began and no fact came into view.
 */
export function standsAt(state: RepairState, facts: readonly Fact[], asOf: Moment): boolean {
  const from = instantOf(state.asOf)
  const to = instantOf(asOf)
  if (to < from || to - from >= OLDEST_MS || dayOf(state.asOf) !== dayOf(asOf)) return false
  const changesAt = rowChangesAt(state)
  if (changesAt !== null && changesAt <= to) return false
  return from === to || !facts.some(({ observedAt }) => instantOf(observedAt) > from && instantOf(observedAt) <= to)
}
