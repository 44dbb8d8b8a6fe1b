import { FactId, Sha256 } from '@/lib/domain/facts/fact'
import { ENTRIES_AT_MOST, type EntryAnswer, holdsBack, REQUEST_BYTES_AT_MOST } from '@/lib/domain/outbox/exchange'
import { type ClockStanding, measureClock } from './device-clock'
import { isOpen, type OutboxEntry, type OutboxOwner } from './outbox-entry'
import type { OutboxExchange, Standstill } from './outbox-exchange'
import type { OutboxStore } from './outbox-store'
import { sendPhoto } from './send-photo'

/** How a sending ended: everything that may go went, or why it stopped. */
export type SendOutcome = { kind: 'sent' } | { kind: 'busy' } | { kind: 'storage-lost' } | Standstill

export type Sending = {
  store: OutboxStore
  owner: OutboxOwner
  exchange: OutboxExchange
  clock(): Promise<ClockStanding | null>
  keepClock(clock: ClockStanding): Promise<void>
  /** Photos that the server said it has whole: not asked again for each try. */
  whole: Set<string>
  /** Called after every change of an entry. */
  changed(): void
}

const HALF_FULL_BYTES = REQUEST_BYTES_AT_MOST / 2
/** Requests after which nothing moved: the server asks again for photos that it said it had, or answers nothing about an entry. */
const STALLS_AT_MOST = 3
/** Few, so that facts do not wait long for the photos of others. */
const WITH_PHOTOS_AT_MOST = 4

/**
 * Send what waits, in order within each stream: photos of an entry first, then the entry; and before any photo, what waits behind none. An entry that is refused keeps its place, with
 * the server's answer, and holds back later ones of its own stream only; what was observed never waits for a refused decision. The caller holds the lock: what stands as `sending` is left over and goes again.
 */
export async function sendEntries(sending: Sending): Promise<SendOutcome> {
  const { store, owner, exchange } = sending
  let stalls = 0
  for (let isFirst = true; ; isFirst = false) {
    const batch = nextBatch(await store.entries(owner))
    if (batch.length === 0 && !isFirst) return { kind: 'sent' }
    const stopped = await sendPhotosOf(sending, batch)
    if (stopped === 'refused') continue
    if (stopped) return stopped
    for (const { id } of batch)
      await store.change(id, (one) => (isOpen(one) ? { ...one, state: 'sending', tries: one.tries + 1 } : null))
    sending.changed()
    const reply = await exchange.send(owner, batch.map(sentEntryOf))
    if (reply.kind !== 'answered') {
      for (const { id } of batch) await store.change(id, backToWaiting)
      sending.changed()
      return reply
    }
    await sending.keepClock(measureClock(reply, await sending.clock()))
    const settledCount = await settle(sending, batch, reply.answers)
    sending.changed()
    if (batch.length === 0) return { kind: 'sent' }
    stalls = settledCount === 0 ? stalls + 1 : 0
    if (stalls > STALLS_AT_MOST) return { kind: 'server-trouble', status: 200, code: 'no-progress' }
  }
}

/** The entries to go next, as many as one request holds: those before which no photo is due in their stream, else some with photos too. None goes behind a refused one. */
function nextBatch(entries: readonly OutboxEntry[]): OutboxEntry[] {
  const withoutPhotos = firstThatMayGo(entries, 0)
  return withoutPhotos.length > 0 ? withoutPhotos : firstThatMayGo(entries, WITH_PHOTOS_AT_MOST)
}

function firstThatMayGo(entries: readonly OutboxEntry[], withPhotosAtMost: number): OutboxEntry[] {
  const heldStreams = new Set<string>()
  const refusedBefore: OutboxEntry[] = []
  const batch: OutboxEntry[] = []
  let sizeBytes = 0
  for (const entry of entries) {
    const { stream } = entry.input
    const isHeld = refusedBefore.some((one) => one.input.stream === stream && holdsBack(one.command, entry.command))
    if (entry.state === 'refused') refusedBefore.push(entry)
    if (!isOpen(entry) || entry.state === 'refused' || isHeld || heldStreams.has(stream)) continue
    if (entry.photos.length > 0 && batch.filter((one) => one.photos.length > 0).length >= withPhotosAtMost) {
      heldStreams.add(stream)
      continue
    }
    sizeBytes += JSON.stringify(entry.input).length
    if (batch.length === ENTRIES_AT_MOST || (batch.length > 0 && sizeBytes > HALF_FULL_BYTES)) break
    batch.push(entry)
  }
  return batch
}

async function sendPhotosOf(
  { store, owner, exchange, whole, changed }: Sending,
  batch: readonly OutboxEntry[],
): Promise<Standstill | 'refused' | null> {
  for (const entry of batch) {
    for (const sha256 of entry.photos) {
      if (whole.has(sha256)) continue
      const blob = await store.photo(owner, sha256)
      const sent = blob
        ? await sendPhoto(exchange, sha256, blob)
        : { kind: 'refused' as const, refusal: { code: 'photo-lost', sha256 } }
      if (sent.kind === 'whole') {
        whole.add(sha256)
        continue
      }
      if (sent.kind !== 'refused') return sent
      await store.change(entry.id, (one) => (isOpen(one) ? { ...one, state: 'refused', refusal: sent.refusal } : null))
      changed()
      return 'refused'
    }
  }
  return null
}

/** Write down what became of each entry. @returns how many of them were received or refused */
async function settle(
  { store, owner, whole }: Sending,
  batch: readonly OutboxEntry[],
  answers: readonly EntryAnswer[],
): Promise<number> {
  let settledCount = 0
  for (const entry of batch) {
    const answer = answers.find((one) => one.id === entry.id)
    if (answer?.kind === 'received') {
      await store.change(entry.id, (one) => ({ ...one, state: 'sent', refusal: null, receipt: answer.receipt }))
      await dropPhotosOf(store, owner, entry)
      settledCount += 1
    } else if (answer?.kind === 'refused') {
      await store.change(entry.id, (one) => ({ ...one, state: 'refused', refusal: answer.refusal }))
      settledCount += 1
    } else {
      if (answer?.kind === 'photo-missing') whole.delete(answer.sha256)
      await store.change(entry.id, backToWaiting)
    }
  }
  return settledCount
}

/** Photo bytes go once the server has them, unless another entry that is not sent cites them too. */
export async function dropPhotosOf(store: OutboxStore, owner: OutboxOwner, sent: OutboxEntry): Promise<void> {
  if (sent.photos.length === 0) return
  const cited = new Set((await store.entries(owner)).filter((one) => one.state !== 'sent').flatMap((one) => one.photos))
  for (const sha256 of sent.photos) if (!cited.has(sha256)) await store.dropPhoto(owner, sha256)
}

function backToWaiting(entry: OutboxEntry): OutboxEntry | null {
  return entry.state === 'sending' ? { ...entry, state: 'waiting' } : null
}

function sentEntryOf({ id, command, input, photos, madeOffline }: OutboxEntry) {
  return {
    id: FactId.parse(id),
    command,
    input,
    photos: photos.map((sha256) => Sha256.parse(sha256)),
    madeOffline,
  }
}
