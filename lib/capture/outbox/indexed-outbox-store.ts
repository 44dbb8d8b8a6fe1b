import { type DBSchema, type IDBPDatabase, openDB } from 'idb'
import { done, type Result, refused } from '@/lib/domain/result'
import { inOrder, type OutboxEntry, type OutboxOwner } from './outbox-entry'
import { isSameEntry, type KeepRefusal, type OutboxStore, OutboxStoreLost } from './outbox-store'

const NAME = 'underwrap-outbox'
const LAST_SEQ = 'last-seq'
/** Written through to the disk before a promise settles: a dead battery must not take what the screen called kept. */
const STRICT = { durability: 'strict' } as const

interface Shape extends DBSchema {
  entries: { key: string; value: OutboxEntry; indexes: { owner: [string, string] } }
  photos: { key: [string, string, string]; value: Blob }
  notes: { key: string; value: unknown }
}

/**
 * Open the outbox of this device in IndexedDB. Refuses `storage-refused` where the browser gives none (private windows, policy): the caller then falls back on memory
 * and says so.
 */
export async function openIndexedOutboxStore(name = NAME): Promise<Result<OutboxStore, KeepRefusal>> {
  if (typeof indexedDB === 'undefined') return refused({ code: 'storage-refused', detail: 'no IndexedDB' })
  try {
    const db = await openDB<Shape>(name, 1, {
      upgrade(fresh) {
        fresh.createObjectStore('entries', { keyPath: 'id' }).createIndex('owner', ['tenant', 'person'])
        fresh.createObjectStore('photos')
        fresh.createObjectStore('notes')
      },
      blocking: (_now, _next, event) => (event.target as IDBDatabase).close(),
    })
    return done(storeOver(db))
  } catch (cause) {
    if (cause instanceof DOMException) return refused({ code: 'storage-refused', detail: cause.name })
    throw cause
  }
}

function storeOver(db: IDBPDatabase<Shape>): OutboxStore {
  const keyOf = (owner: OutboxOwner, sha256: string): [string, string, string] => [owner.tenant, owner.person, sha256]
  return {
    keeps: 'over a reload',
    async add(entry, added, also) {
      try {
        const tx = db.transaction(['entries', 'photos', 'notes'], 'readwrite', STRICT)
        const [entries, photos, notes] = [tx.objectStore('entries'), tx.objectStore('photos'), tx.objectStore('notes')]
        const known = await entries.get(entry.id)
        if (known) {
          await tx.done
          return isSameEntry(known, entry) ? done(known) : refused({ code: 'id-taken' })
        }
        const lastSeq = Number((await notes.get(LAST_SEQ)) ?? 0)
        const placed: OutboxEntry = { ...entry, seq: entry.seq ?? lastSeq + 1 }
        const other = also && (await entries.get(also.id))
        const changed = other && also.change(other)
        const writes = [
          notes.put(Math.max(lastSeq, placed.seq), LAST_SEQ),
          entries.add(placed),
          ...added.map(({ sha256, blob }) => photos.put(blob, keyOf(entry, sha256))),
          ...(changed ? [entries.put(changed)] : []),
          tx.done,
        ]
        await Promise.all(writes)
        return done(placed)
      } catch (cause) {
        return refused(refusalOf(cause))
      }
    },
    entries: (owner) =>
      kept(async () => (await db.getAllFromIndex('entries', 'owner', [owner.tenant, owner.person])).sort(inOrder)),
    entriesWith: ({ tenant, person }, key) =>
      kept(async () => {
        const tx = db.transaction(['entries', 'notes'])
        const [entries, note] = await Promise.all([
          tx.objectStore('entries').index('owner').getAll([tenant, person]),
          tx.objectStore('notes').get(key),
          tx.done,
        ])
        return { entries: entries.sort(inOrder), note: note ?? null }
      }),
    change: (id, change) =>
      kept(async () => {
        const tx = db.transaction('entries', 'readwrite', STRICT)
        const known = await tx.store.get(id)
        const changed = known ? change(known) : null
        await Promise.all([changed && tx.store.put(changed), tx.done])
        return changed
      }),
    photo: (owner, sha256) => kept(async () => (await db.get('photos', keyOf(owner, sha256))) ?? null),
    dropPhoto: (owner, sha256) => kept(() => db.delete('photos', keyOf(owner, sha256))),
    forgetSent: (id) =>
      kept(async () => {
        const tx = db.transaction('entries', 'readwrite', STRICT)
        const known = await tx.store.get(id)
        await Promise.all([known?.state === 'sent' && tx.store.delete(id), tx.done])
      }),
    note: (key) => kept(async () => (await db.get('notes', key)) ?? null),
    keepNote: (key, value) =>
      kept(async () => {
        await db.put('notes', value, key)
      }),
    close: () => db.close(),
  }
}

async function kept<T>(work: () => Promise<T>): Promise<T> {
  try {
    return await work()
  } catch (cause) {
    throw cause instanceof DOMException ? new OutboxStoreLost(cause) : cause
  }
}

function refusalOf(cause: unknown): KeepRefusal {
  if (!(cause instanceof DOMException)) throw cause
  return cause.name === 'QuotaExceededError'
    ? { code: 'storage-full' }
    : { code: 'storage-refused', detail: cause.name }
}
