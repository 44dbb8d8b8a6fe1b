import type { Fact } from '../facts/fact-kinds'
import { instantOf, type Moment } from '../time'
import type { Quarantine } from './store-states'

/**
 * Times that a batch or an instrument stood in quarantine. A recall quarantines too; a second quarantine within one adds nothing.
 * @param own facts of its stream in fold order
 */
export function quarantinesOf(own: readonly Fact[]): Quarantine[] {
  const times: Quarantine[] = []
  for (const fact of own) {
    const last = times.at(-1)
    const stands = last !== undefined && last.to === null
    if (fact.kind === 'batch-quarantined' || fact.kind === 'batch-recalled' || fact.kind === 'instrument-quarantined') {
      if (!stands) times.push({ from: fact.observedAt, to: null, fact: fact.id, reason: fact.body.reason })
    } else if (fact.kind === 'quarantine-lifted' && stands) last.to = fact.observedAt
  }
  return times
}

/** Whether the last quarantine was not lifted. */
export function isStanding(times: readonly Quarantine[]): boolean {
  return times.at(-1)?.to === null
}

/** The quarantine that held at a moment; null when none did. */
export function quarantineAt(times: readonly Quarantine[], at: Moment): Quarantine | null {
  const instant = instantOf(at)
  return times.find((one) => instantOf(one.from) <= instant && (one.to === null || instant < instantOf(one.to))) ?? null
}
