import { openIndexedOutboxStore } from '@/lib/capture/outbox/indexed-outbox-store'
import { createMemoryOutboxStore } from '@/lib/capture/outbox/memory-outbox-store'
import type { NewEntry, OutboxStore } from '@/lib/capture/outbox/outbox-store'
import { waitingEntry } from './waiting-entry'

const OWNER = { tenant: 'tenant-a', person: 'T1' }

function entryOf(no: number, more: Partial<NewEntry> = {}): NewEntry {
  return waitingEntry({
    ...OWNER,
    id: `019e4444-0000-7000-8000-00000000000${no}`,
    seq: null,
    command: 'record-point',
    input: { stream: 'repair:R-1', body: { no } },
    capturedAt: no,
    madeOffline: false,
    ...more,
  })
}

/** What every store must do; each line tells what was seen. Run on memory here and on IndexedDB in a browser, it must give the same. */
export async function observeStore(store: OutboxStore): Promise<unknown[]> {
  const seen: unknown[] = []
  const sha256 = 'a'.repeat(64)
  const photo = { sha256, blob: new Blob(['bytes']) }
  for (const no of [1, 2]) seen.push((await store.add(entryOf(no), [])).ok)
  seen.push((await store.add(entryOf(3, { photos: [sha256] }), [photo])).ok)
  seen.push(await store.add(entryOf(1), []))
  seen.push(await store.add(entryOf(1, { input: { stream: 'repair:R-1', body: 'other' } }), []))
  seen.push((await store.add(entryOf(4, { person: 'L1' }), [])).ok)
  seen.push((await store.entries(OWNER)).map((one) => [one.id, one.seq]))
  const again = entryOf(5, { seq: 2, replaces: entryOf(2).id })
  seen.push(await store.add(again, [], { id: entryOf(2).id, change: (one) => ({ ...one, state: 'set aside' }) }))
  seen.push((await store.entries(OWNER)).map((one) => [one.id, one.seq, one.state]))
  seen.push(await store.change(entryOf(3).id, (one) => ({ ...one, state: 'sent', tries: one.tries + 1 })))
  seen.push(await store.change(entryOf(3).id, () => null))
  seen.push(await store.change(entryOf(9).id, (one) => one))
  seen.push(await (await store.photo(OWNER, sha256))?.text())
  seen.push(await store.photo({ ...OWNER, person: 'L1' }, sha256))
  await store.dropPhoto(OWNER, sha256)
  seen.push(await store.photo(OWNER, sha256))
  for (const no of [1, 3]) await store.forgetSent(entryOf(no).id)
  seen.push((await store.entries(OWNER)).map((one) => one.id))
  await store.keepNote('clock', { offsetMs: 3 })
  seen.push([await store.note('clock'), await store.note('none')])
  for (const [person, key] of [
    ['T1', 'clock'],
    ['L1', 'none'],
  ] as const) {
    const { entries, note } = await store.entriesWith({ ...OWNER, person }, key)
    seen.push([entries.map((one) => [one.id, one.seq]), note])
  }
  return seen
}

export const observeMemory = () => observeStore(createMemoryOutboxStore())

/** The same on IndexedDB, with what a second opening finds. */
export async function observeIndexed(): Promise<{ seen: unknown[]; reopened: string[] }> {
  const opened = await openIndexedOutboxStore('contract')
  if (!opened.ok) throw new Error(opened.error.code)
  const seen = await observeStore(opened.value)
  opened.value.close()
  const anew = await openIndexedOutboxStore('contract')
  if (!anew.ok) throw new Error(anew.error.code)
  return { seen, reopened: (await anew.value.entries(OWNER)).map((one) => one.id) }
}

Object.assign(globalThis, { observeIndexed })
