import { v7 } from 'uuid'
import { done, type Result, refused } from '@/lib/domain/result'
import type { ClockStanding } from './device-clock'
import { judgeRoom } from './device-storage'
import { digestOfBlob } from './digest-of-blob'
import { clockIn, entriesAndClock, keepClockIn } from './kept-clock'
import { countEntries } from './outbox-count'
import type { OutboxEntry } from './outbox-entry'
import { type NewEntry, OutboxStoreLost } from './outbox-store'
import type { Captured, DealRefusal, Outbox, OutboxGround, OutboxStatus } from './outbox-terms'
import { dropPhotosOf, type SendOutcome, sendEntries } from './send-entries'

/** What was sent stays listed on the device for a week, without its photos. */
const SENT_KEPT_MS = 7 * 24 * 3_600_000

/** The outbox of one person on this device. Entries of others are neither shown nor sent. */
export function createOutbox(ground: OutboxGround): Outbox {
  const { store, owner, storage, locks } = ground
  const listeners = new Set<(status: OutboxStatus) => void>()
  const whole = new Set<string>()
  let last: SendOutcome | null = null

  const clock = () => clockIn(store)
  const stated = (standing: ClockStanding | null) => ({
    id: ground.deviceId,
    clockOffsetMs: standing?.offsetMs ?? null,
  })
  const deviceNow = async () => stated(await clock())
  const standing = async () => {
    const { entries, clock } = await entriesAndClock(store, owner)
    return { entries, status: { ...countEntries(entries), last, clock }, device: stated(clock) }
  }
  const status = async () => (await standing()).status
  const tellHere = () => {
    if (listeners.size > 0)
      void status().then(
        (now) => {
          for (const listener of listeners) listener(now)
        },
        (cause: unknown) => {
          if (!(cause instanceof OutboxStoreLost)) throw cause
        },
      )
  }
  const changed = () => {
    tellHere()
    ground.signal?.tell()
  }

  async function prepare(captured: Captured) {
    // with a device's key a signer is a person's id; with a password it is an object that holds it
    if (typeof captured.input.signer === 'object') throw new RangeError('a password is never kept on a device')
    const photos = await Promise.all(
      (captured.photos ?? []).map(async (blob) => ({ sha256: await digestOfBlob(blob), blob })),
    )
    const neededBytes = photos.reduce((sum, one) => sum + one.blob.size, JSON.stringify(captured.input).length)
    const room = await judgeRoom(storage, store.keeps, neededBytes)
    if (room.space === 'full')
      return refused({ code: 'storage-nearly-full' as const, freeBytes: room.freeBytes ?? 0, neededBytes })
    const { id: _id, ...input } = captured.input
    const device = captured.device ?? (await deviceNow())
    const entry: NewEntry = {
      ...owner,
      id: captured.id ?? v7(),
      seq: null,
      command: captured.command,
      input: { ...input, stream: captured.input.stream, body: captured.input.body, device },
      photos: photos.map((one) => one.sha256),
      capturedAt: ground.nowMs(),
      madeOffline: !ground.isOnline(),
      tries: 0,
      state: 'waiting',
      refusal: null,
      settled: null,
      replaces: null,
      receipt: null,
    }
    return done({ entry, photos })
  }

  async function forgetSentBefore(atMs: number): Promise<void> {
    for (const entry of await store.entries(owner)) {
      if (entry.state !== 'sent' || entry.capturedAt >= atMs) continue
      await dropPhotosOf(store, owner, entry)
      await store.forgetSent(entry.id)
    }
  }

  async function refusedEntry(id: string): Promise<Result<OutboxEntry, { code: 'not-refused' }>> {
    const found = (await store.entries(owner)).find((one) => one.id === id)
    return found?.state === 'refused' ? done(found) : refused({ code: 'not-refused' })
  }

  async function deal(
    id: string,
    change: (entry: OutboxEntry) => OutboxEntry,
  ): Promise<Result<OutboxEntry, DealRefusal>> {
    const found = await refusedEntry(id)
    if (!found.ok) return found
    const dealt = await store.change(id, (one) => (one.state === 'refused' ? change(one) : null))
    changed()
    return dealt ? done(dealt) : refused({ code: 'not-refused' })
  }

  return {
    device: deviceNow,
    room: () => judgeRoom(storage, store.keeps),
    async capture(captured) {
      const prepared = await prepare(captured)
      if (!prepared.ok) return prepared
      const kept = await store.add(prepared.value.entry, prepared.value.photos)
      changed()
      return kept
    },
    entries: () => store.entries(owner),
    status,
    standing,
    watch(listener) {
      listeners.add(listener)
      const deaf = ground.signal?.hear(tellHere)
      void status().then(listener)
      return () => {
        listeners.delete(listener)
        deaf?.()
      }
    },
    async send(exchange) {
      const keepClock = (standing: ClockStanding) => keepClockIn(store, standing)
      const sendAll = async () => {
        const outcome = await sendEntries({ store, owner, exchange, whole, clock, keepClock, changed })
        await forgetSentBefore(ground.nowMs() - SENT_KEPT_MS)
        return outcome
      }
      let outcome: SendOutcome
      try {
        const ran = await locks.run(`underwrap-outbox ${owner.tenant} ${owner.person}`, sendAll)
        outcome = ran === 'busy' ? { kind: 'busy' } : ran
      } catch (cause) {
        if (!(cause instanceof OutboxStoreLost)) throw cause
        outcome = { kind: 'storage-lost' }
      }
      last = outcome
      changed()
      return outcome
    },
    tryAgain: (id) => deal(id, (one) => ({ ...one, state: 'waiting', refusal: null })),
    async sendAgain(id, { input, photos, device }) {
      const found = await refusedEntry(id)
      if (!found.ok) return found
      const old = found.value
      const prepared = await prepare({
        command: old.command,
        input,
        ...(photos ? { photos } : {}),
        ...(device ? { device } : {}),
      })
      if (!prepared.ok) return prepared
      const { entry } = prepared.value
      const again = { ...entry, seq: old.seq, photos: photos ? entry.photos : old.photos, replaces: old.id }
      const kept = await store.add(again, prepared.value.photos, {
        id,
        change: (one) => ({
          ...one,
          state: 'set aside',
          settled: { at: ground.nowMs(), reason: 'sent again changed', againAs: entry.id },
        }),
      })
      changed()
      return kept
    },
    async setAside(id, reason) {
      const why = reason.trim()
      if (why.length < 3) return refused({ code: 'reason-missing' })
      return deal(id, (one) => ({
        ...one,
        state: 'set aside',
        settled: { at: ground.nowMs(), reason: why, againAs: null },
      }))
    },
  }
}
