import type { Fact } from '@/lib/domain/facts/fact-kinds'
import { instantOf, minutesBetween } from '@/lib/domain/time'
import type { Desk } from './desk'
import type { Refusal } from './refusal'

/** A device's clock may run ahead of ours by this much. */
const CLOCK_AHEAD_MINUTES = 24 * 60

/**
 * Whether a decision made on a device bears a time that it cannot have: other than its entry, still to come, or before something that the same device had entered already and sent. So nobody
 * places a release before a step that this device knew of. Null for a decision that states no time of its own: it is made now.
 */
export function misdated(
  desk: Pick<Desk, 'now'>,
  fact: Pick<Fact, 'observedAt' | 'enteredAt' | 'device' | 'id'>,
  facts: readonly Fact[],
): Refusal | null {
  const now = desk.now(null)
  // a time of the caller's choice is a device's to state, never the server's own
  if (fact.device.id === 'server')
    return Math.abs(minutesBetween(now, fact.observedAt)) <= 1
      ? null
      : { code: 'decision-misdated', decidedAt: fact.observedAt, notBefore: now }
  const earlier = facts
    .filter((one) => one.device.id === fact.device.id && one.id !== fact.id)
    .map((one) => one.enteredAt)
    .sort((a, b) => instantOf(a) - instantOf(b))
  const last = earlier.at(-1)
  const isBefore = last !== undefined && instantOf(fact.enteredAt) < instantOf(last)
  const isAhead = minutesBetween(now, fact.enteredAt) > CLOCK_AHEAD_MINUTES
  return isBefore || isAhead || instantOf(fact.observedAt) !== instantOf(fact.enteredAt)
    ? {
        code: 'decision-misdated',
        decidedAt: fact.observedAt,
        notBefore: isBefore ? last : isAhead ? now : fact.enteredAt,
      }
    : null
}
