import type { Fact } from '@/lib/domain/facts/fact-kinds'
import { LATE_AFTER_MINUTES } from '@/lib/domain/facts/late-after'
import { instantOf, minutesBetween } from '@/lib/domain/time'
import type { Desk } from './desk'
import type { Refusal } from './refusal'

/** A device's clock may run ahead of ours by this much before an entry time is refused: such a time would hide a late entry. */
const CLOCK_AHEAD_MINUTES = 24 * 60

/** Whether a fact is late without saying why, or was entered at a time still to come. Late entries are allowed, never disguised. */
export function lateRefusal(
  desk: Pick<Desk, 'now'>,
  fact: Pick<Fact, 'observedAt' | 'enteredAt' | 'late'>,
): Refusal | null {
  if (minutesBetween(desk.now(null), fact.enteredAt) > CLOCK_AHEAD_MINUTES) return { code: 'entered-in-future' }
  const entered = Math.max(instantOf(fact.enteredAt), instantOf(fact.observedAt))
  const minutesLate = Math.floor((entered - instantOf(fact.observedAt)) / 60_000)
  return minutesLate > LATE_AFTER_MINUTES && !fact.late ? { code: 'late-reason-missing', minutesLate } : null
}
