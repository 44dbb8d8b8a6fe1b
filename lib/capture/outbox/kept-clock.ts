import { ClockStanding } from './device-clock'
import type { OutboxEntry, OutboxOwner } from './outbox-entry'
import type { OutboxStore } from './outbox-store'

const CLOCK = 'clock'
const KeptClock = ClockStanding.nullable()

/** How the device's clock stood at the last contact; null before the first. */
export async function clockIn(store: Pick<OutboxStore, 'note'>): Promise<ClockStanding | null> {
  return KeptClock.parse(await store.note(CLOCK))
}

/** The entries of a person beside how the clock stood, in one read. */
export async function entriesAndClock(
  store: Pick<OutboxStore, 'entriesWith'>,
  owner: OutboxOwner,
): Promise<{ entries: OutboxEntry[]; clock: ClockStanding | null }> {
  const { entries, note } = await store.entriesWith(owner, CLOCK)
  return { entries, clock: KeptClock.parse(note) }
}

/** Keep how the clock stood at a contact. */
export function keepClockIn(store: Pick<OutboxStore, 'keepNote'>, standing: ClockStanding): Promise<void> {
  return store.keepNote(CLOCK, standing)
}
