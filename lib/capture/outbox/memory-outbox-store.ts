import { done, refused } from '@/lib/domain/result'
import { inOrder, type OutboxEntry, type OutboxOwner } from './outbox-entry'
import { isSameEntry, type OutboxStore } from './outbox-store'

const BYTES_AT_MOST = 200_000_000

/**
 * An outbox in memory: what a page falls back on when the device refuses IndexedDB. It is gone with the page, and the outbox says so before capture.
 * @param room bytes that it takes before it answers `storage-full`
 */
export function createMemoryOutboxStore(room: { bytesAtMost: number } = { bytesAtMost: BYTES_AT_MOST }): OutboxStore {
  const kept = new Map<string, OutboxEntry>()
  const photos = new Map<string, Blob>()
  const notes = new Map<string, unknown>()
  let lastSeq = 0
  const keyOf = (owner: OutboxOwner, sha256: string) => JSON.stringify([owner.tenant, owner.person, sha256])
  const usedBytes = () =>
    [...photos.values()].reduce((sum, blob) => sum + blob.size, 0) +
    [...kept.values()].reduce((sum, entry) => sum + JSON.stringify(entry).length, 0)

  const entries = async (owner: OutboxOwner) =>
    structuredClone(
      [...kept.values()].filter((one) => one.tenant === owner.tenant && one.person === owner.person).sort(inOrder),
    )
  const note = async (key: string) => structuredClone(notes.get(key) ?? null)

  return {
    keeps: 'until this page closes',
    async add(entry, added, also) {
      const known = kept.get(entry.id)
      if (known) return isSameEntry(known, entry) ? done(structuredClone(known)) : refused({ code: 'id-taken' })
      const fresh = added.filter((one) => !photos.has(keyOf(entry, one.sha256)))
      const neededBytes = fresh.reduce((sum, one) => sum + one.blob.size, 0) + JSON.stringify(entry).length
      if (usedBytes() + neededBytes > room.bytesAtMost) return refused({ code: 'storage-full' })
      lastSeq = Math.max(lastSeq, entry.seq ?? lastSeq + 1)
      const placed = structuredClone({ ...entry, seq: entry.seq ?? lastSeq })
      const other = also && kept.get(also.id)
      const changed = other && also.change(structuredClone(other))
      if (changed) kept.set(changed.id, changed)
      for (const { sha256, blob } of fresh) photos.set(keyOf(entry, sha256), blob)
      kept.set(placed.id, placed)
      return done(structuredClone(placed))
    },
    entries,
    entriesWith: async (owner, key) => ({ entries: await entries(owner), note: await note(key) }),
    async change(id, change) {
      const known = kept.get(id)
      const changed = known ? change(structuredClone(known)) : null
      if (changed) kept.set(id, structuredClone(changed))
      return changed
    },
    photo: async (owner, sha256) => photos.get(keyOf(owner, sha256)) ?? null,
    async dropPhoto(owner, sha256) {
      photos.delete(keyOf(owner, sha256))
    },
    async forgetSent(id) {
      if (kept.get(id)?.state === 'sent') kept.delete(id)
    },
    note,
    async keepNote(key, value) {
      notes.set(key, structuredClone(value))
    },
    close() {},
  }
}
