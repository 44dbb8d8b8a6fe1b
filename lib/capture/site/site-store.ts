import { type DBSchema, type IDBPDatabase, openDB } from 'idb'
import type { ProjectPack } from '@/lib/domain/capture/project-pack'
import type { SitePack } from '@/lib/domain/capture/site-pack'
import type { PersonId } from '@/lib/domain/facts/fact'
import { done, type Result, refused } from '@/lib/domain/result'

const NAME = 'underwrap-site'
const OWNER = 'owner'

/** Who was signed in when this device last had a network, and how far the clock that counts is ahead of the device's own. */
export type SiteOwner = { tenant: string; person: PersonId; name: string; clockAheadMs: number }

interface Shape extends DBSchema {
  packs: { key: [string, string, string]; value: SitePack }
  notes: { key: string; value: SiteOwner }
  projects: { key: [string, string, string]; value: ProjectPack }
}

export type KeepPackRefusal = { code: 'storage-full' } | { code: 'storage-refused'; detail: string }

/** Pinned repairs of this device, each person's apart, and who works here. */
export interface SiteStore {
  owner(): Promise<SiteOwner | null>
  /** Who works here, and the pack of one repair of that person's, in one read; either is null where it is not here. */
  ownerWith(number: string): Promise<{ owner: SiteOwner | null; pack: SitePack | null }>
  keepOwner(owner: SiteOwner): Promise<void>
  packs(owner: Pick<SiteOwner, 'tenant' | 'person'>): Promise<SitePack[]>
  /** The pack of one repair; null where it is not here. */
  pack(owner: Pick<SiteOwner, 'tenant' | 'person'>, number: string): Promise<SitePack | null>
  /** Numbers of the repairs that are here, in order. */
  numbers(owner: Pick<SiteOwner, 'tenant' | 'person'>): Promise<string[]>
  /** Keep a pack in the place of an older one. Refuses `storage-full`, `storage-refused`; the older one then stays. */
  keepPack(pack: SitePack): Promise<Result<null, KeepPackRefusal>>
  /** Projects taken along to open repairs in. */
  projects(owner: Pick<SiteOwner, 'tenant' | 'person'>): Promise<ProjectPack[]>
  /** Keep a project in the place of an older one. Refuses as keepPack does. */
  keepProject(pack: ProjectPack): Promise<Result<null, KeepPackRefusal>>
  dropPack(pack: Pick<SitePack, 'tenant' | 'person' | 'number'>): Promise<void>
  /** Forget who works here, and every pinned repair and project of everyone. Entries that wait in the outbox are not touched. */
  clear(): Promise<void>
  close(): void
}

/** Open the pinned repairs of this device; null where the browser gives no storage. */
export async function openSiteStore(name = NAME): Promise<SiteStore | null> {
  if (typeof indexedDB === 'undefined') return null
  try {
    const db = await openDB<Shape>(name, 2, {
      upgrade(opened, from) {
        if (from < 1) {
          opened.createObjectStore('packs')
          opened.createObjectStore('notes')
        }
        if (from < 2) opened.createObjectStore('projects')
      },
      blocking: (_now, _next, event) => (event.target as IDBDatabase).close(),
    })
    return storeOver(db)
  } catch (cause) {
    if (cause instanceof DOMException) return null
    throw cause
  }
}

function storeOver(db: IDBPDatabase<Shape>): SiteStore {
  return {
    owner: async () => (await db.get('notes', OWNER)) ?? null,
    async ownerWith(number) {
      const tx = db.transaction(['notes', 'packs'])
      const owner = (await tx.objectStore('notes').get(OWNER)) ?? null
      const pack = owner ? await tx.objectStore('packs').get([owner.tenant, owner.person, number]) : null
      return { owner, pack: pack ?? null }
    },
    async keepOwner(owner) {
      await db.put('notes', owner, OWNER)
    },
    async packs(owner) {
      const packs = await db.getAll('packs', allOf(owner))
      return packs.sort((a, b) => (a.number < b.number ? -1 : 1))
    },
    pack: async ({ tenant, person }, number) => (await db.get('packs', [tenant, person, number])) ?? null,
    async numbers(owner) {
      const keys = await db.getAllKeys('packs', allOf(owner))
      return keys.map(([, , number]) => number).sort()
    },
    keepPack: (pack) => keeping(() => db.put('packs', pack, [pack.tenant, pack.person, pack.number])),
    projects: (owner) => db.getAll('projects', allOf(owner)),
    keepProject: (pack) => keeping(() => db.put('projects', pack, [pack.tenant, pack.person, pack.project])),
    dropPack: ({ tenant, person, number }) => db.delete('packs', [tenant, person, number]),
    async clear() {
      const tx = db.transaction(['packs', 'notes', 'projects'], 'readwrite')
      const cleared = (['packs', 'notes', 'projects'] as const).map((one) => tx.objectStore(one).clear())
      await Promise.all([...cleared, tx.done])
    },
    close: () => db.close(),
  }
}

/** Everything of one person: an array sorts after every string. */
function allOf({ tenant, person }: Pick<SiteOwner, 'tenant' | 'person'>): IDBKeyRange {
  return IDBKeyRange.bound([tenant, person], [tenant, person, []])
}

async function keeping(put: () => Promise<unknown>): Promise<Result<null, KeepPackRefusal>> {
  try {
    await put()
    return done(null)
  } catch (cause) {
    if (!(cause instanceof DOMException)) throw cause
    return cause.name === 'QuotaExceededError'
      ? refused({ code: 'storage-full' })
      : refused({ code: 'storage-refused', detail: cause.name })
  }
}
