'use client'
import { numbersUsed } from '@/app/_capture/numbers-used'
import { type PageOutbox, pageOutbox } from '@/app/_capture/page-outbox'
import type { Room } from '@/lib/capture/outbox/device-storage'
import type { OutboxEntry } from '@/lib/capture/outbox/outbox-entry'
import type { OutboxStatus } from '@/lib/capture/outbox/outbox-terms'
import { isSitePage, sitePlaceOf } from '@/lib/capture/site/site-address'
import { openSiteStore, type SiteOwner, type SiteStore } from '@/lib/capture/site/site-store'
import type { ProjectPack } from '@/lib/domain/capture/project-pack'
import type { SitePack } from '@/lib/domain/capture/site-pack'
import { firstScreen } from './site-screens'

/** What this device keeps for the person who works here, as it was read. */
export type Kept = {
  owner: SiteOwner
  packs: SitePack[]
  /** Projects taken along to open repairs in. */
  projects: ProjectPack[]
  /** Only the repair in the address is read: the others, and the projects, follow once it is drawn. */
  isPart: boolean
  page: PageOutbox
  entries: OutboxEntry[]
  status: OutboxStatus
  room: Room
  /** Numbers of repairs that were used up here. */
  used: string[]
  deviceId: string
  ways: typeof import('@/lib/capture/site/opened-here')
}

/** What knows every kind of fact comes beside the storage and the screen, not before them. */
const loadOpening = () => import('@/lib/capture/site/opened-here')

type Found = { kind: 'no storage' | 'nobody' } | ({ kind: 'open'; store: SiteStore } & Kept)

/** Read what this device keeps for who works here. */
async function readKept(): Promise<Found> {
  const loaded = loadOpening()
  // told where it is waited for; a device without storage or owner never does
  loaded.catch(() => undefined)
  const store = await openSiteStore()
  if (!store) return { kind: 'no storage' }
  const owner = await store.owner()
  if (!owner) return { kind: 'nobody' }
  // the largest is asked for first: it is read while the outbox opens
  const along = readAlong(store, owner, sitePlaceOf(location.hash)?.repair ?? null)
  along.catch(() => undefined)
  const page = await pageOutbox(owner)
  const kept = Promise.all([page.outbox.entries(), page.outbox.status(), page.outbox.room(), page.device()])
  const [ways, packs, [entries, status, room, device], used] = await Promise.all([
    loaded,
    along,
    kept,
    numbersUsed(page),
  ])
  return { kind: 'open', store, owner, ...packs, page, entries, status, room, used, deviceId: device.id, ways }
}

type Along = Pick<Kept, 'packs' | 'projects' | 'isPart'>

async function readAlong(store: SiteStore, owner: SiteOwner, number: string | null): Promise<Along> {
  const pack = number === null ? null : await store.pack(owner, number)
  if (pack) return { packs: [pack], projects: [], isPart: true }
  const [packs, projects] = await Promise.all([store.packs(owner), store.projects(owner)])
  return { packs, projects, isPart: false }
}

/** What else was taken along, beside what was read, one after the other so that no key waits for all of it. */
export async function readRest({
  store,
  owner,
  packs: [shown],
}: { store: SiteStore } & Pick<Kept, 'owner' | 'packs'>): Promise<Along> {
  const packs: SitePack[] = []
  for (const number of await store.numbers(owner)) {
    const pack = number === shown?.number ? shown : await store.pack(owner, number)
    if (pack) packs.push(pack)
  }
  return { packs, projects: await store.projects(owner), isPart: false }
}

/** Begun with the program itself, for the first opening of the page: the device reads while the shell is drawn, and the screen comes with what it shows. */
let begun = isSitePage() ? Promise.all([readKept(), firstScreen]).then(([found]) => found) : null
// told to who asks for it
begun?.catch(() => undefined)

/** What this device keeps for who works here, or why there is nothing. The first to ask gets what was begun with the page. */
export function findKept(): Promise<Found> {
  const found = begun ?? readKept()
  begun = null
  return found
}
