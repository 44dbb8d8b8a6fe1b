import { done, type Result, refused } from '@/lib/domain/result'
import { ClockStanding } from './device-clock'
import { createMemoryOutboxStore } from './memory-outbox-store'
import { type OpenFileRefusal, openOutboxFile } from './open-outbox-file'
import type { OutboxEntry, OutboxOwner } from './outbox-entry'
import type { OutboxExchange } from './outbox-exchange'
import { type SendOutcome, sendEntries } from './send-entries'

/** What became of every entry of a file that was carried in. What did not arrive stays on the device that wrote the file, and in the file. */
export type CarriedIn = { outcome: SendOutcome; entries: OutboxEntry[] }

/**
 * Send what a file holds by the same way as a device does, under the session of the person whose entries they are: opened in this browser, the passphrase goes nowhere. Carried in again, or sent by the
 * device afterwards, everything is received once. Refuses as `openOutboxFile`, and `other-person` when the file is another person's.
 */
export async function carryInFile(
  file: Blob,
  passphrase: string,
  me: OutboxOwner,
  exchange: OutboxExchange,
): Promise<Result<CarriedIn, OpenFileRefusal | { code: 'other-person'; person: string }>> {
  const opened = await openOutboxFile(file, passphrase)
  if (!opened.ok) return opened
  const { owner, entries, photos } = opened.value
  const isMine = (one: OutboxOwner) => one.tenant === me.tenant && one.person === me.person
  const other = [owner, ...entries].find((one) => !isMine(one))
  if (other) return refused({ code: 'other-person', person: other.person })
  const store = createMemoryOutboxStore({ bytesAtMost: Number.MAX_SAFE_INTEGER })
  for (const entry of entries) {
    const cited = photos.filter((one) => entry.photos.includes(one.sha256))
    const goes = entry.state === 'set aside' ? entry : { ...entry, state: 'waiting' as const, refusal: null }
    await store.add(goes, cited)
  }
  const outcome = await sendEntries({
    store,
    owner: me,
    exchange,
    whole: new Set(),
    clock: async () => ClockStanding.nullable().parse(await store.note('clock')),
    // the clock of the machine that carries is not that of the device which captured
    keepClock: async () => undefined,
    changed: () => undefined,
  })
  return done({ outcome, entries: await store.entries(me) })
}
