import type { OutboxEntry } from '@/lib/capture/outbox/outbox-entry'

/** What an outbox writes into every entry that it takes in, sent not even once. */
type AsKept = 'photos' | 'tries' | 'state' | 'refusal' | 'settled' | 'replaces' | 'receipt'

/** An entry as an outbox keeps it, sent not even once, unless more is said. `seq` is null where the store is to give it its place. */
export function waitingEntry<Seq extends number | null>(
  said: { seq: Seq } & Omit<OutboxEntry, 'seq' | AsKept> & Partial<Pick<OutboxEntry, AsKept>>,
) {
  return {
    photos: [],
    tries: 0,
    state: 'waiting' as const,
    refusal: null,
    settled: null,
    replaces: null,
    receipt: null,
    ...said,
  }
}
