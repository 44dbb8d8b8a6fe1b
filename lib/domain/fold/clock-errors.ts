import type { FactId } from '../facts/fact'
import type { Fact } from '../facts/fact-kinds'
import { dayOf, instantOf } from '../time'
import { ofKind } from './order-facts'

/**
 * Known clock error in milliseconds of the device at each fact, where it is not zero: the offset noted at the device's last contact, or the one
 * found at the first check that followed on the same day, whichever is larger. A device is ahead when positive.
 */
export function clockErrors(facts: readonly Fact[], own: readonly Fact[]): Record<FactId, number> {
  const checks = ofKind(facts, 'clock-checked')
  const errors: Record<FactId, number> = {}
  for (const fact of own) {
    const next = checks.find(
      (one) =>
        one.stream === `device:${fact.device.id}` &&
        instantOf(one.observedAt) >= instantOf(fact.observedAt) &&
        dayOf(one.observedAt) === dayOf(fact.observedAt),
    )
    const error = [fact.device.clockOffsetMs ?? 0, next?.body.offsetMs ?? 0].reduce((a, b) =>
      Math.abs(b) > Math.abs(a) ? b : a,
    )
    if (error !== 0) errors[fact.id] = error
  }
  return errors
}
