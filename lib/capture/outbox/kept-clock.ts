import { ClockStanding } from './device-clock'
import type { OutboxStore } from './outbox-store'

const CLOCK = 'clock'
const KeptClock = ClockStanding.nullable()

/** How the device's clock stood at the last contact; null before the first. */
export async function clockIn(store: Pick<OutboxStore, 'note'>): Promise<ClockStanding | null> {
  return KeptClock.parse(await store.note(CLOCK))
}

/** Keep how the clock stood at a contact. */
export function keepClockIn(store: Pick<OutboxStore, 'keepNote'>, standing: ClockStanding): Promise<void> {
  return store.keepNote(CLOCK, standing)
}
