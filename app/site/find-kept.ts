'use client'
import { numbersUsed } from '@/app/_capture/numbers-used'
import { type PageOutbox, pageOutbox, pageStore } from '@/app/_capture/page-outbox'
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
  /** What knows the repairs that were opened here; null while only a part is read. */
  ways: typeof import('@/lib/capture/site/opened-here') | null
}

/** What knows every kind of fact, which a repair that was taken along needs not. */
const loadOpening = () => import('@/lib/capture/site/opened-here')

type Found = { kind: 'no storage' | 'nobody' } | ({ kind: 'open'; store: SiteStore } & Kept)

/** Read what this device keeps for who works here. */
async function readKept(): Promise<Found> {
  // told where it is waited for
  pageStore().catch(() => undefined)
  const store = await openSiteStore()
  if (!store) return { kind: 'no storage' }
  const { owner, pack } = await ownerWith(store, sitePlaceOf(location.hash)?.repair ?? null)
  if (!owner) return { kind: 'nobody' }
  const page = await pageOutbox(owner)
  const along = pack ? partOf(pack) : readAlong(store, owner, page)
  const kept = Promise.all([along, page.outbox.standing(), page.outbox.room()])
  const [read, { entries, status, device }, room] = await kept
  return { kind: 'open', store, owner, ...read, page, entries, status, room, deviceId: device.id }
}

type Along = Pick<Kept, 'packs' | 'projects' | 'used' | 'ways' | 'isPart'>

const partOf = (pack: SitePack): Along => ({ packs: [pack], projects: [], used: [], ways: null, isPart: true })

async function ownerWith(store: SiteStore, number: string | null) {
  return number === null ? { owner: await store.owner(), pack: null } : store.ownerWith(number)
}

async function readAlong(store: SiteStore, owner: SiteOwner, page: PageOutbox): Promise<Along> {
  const read = [store.packs(owner), store.projects(owner), numbersUsed(page), loadOpening()] as const
  const [packs, projects, used, ways] = await Promise.all(read)
  return { packs, projects, used, ways, isPart: false }
}

/** What else was taken along, beside what was read, one after the other so that no key waits for all of it. */
export async function readRest({
  store,
  owner,
  packs: [shown],
  page,
}: { store: SiteStore } & Pick<Kept, 'owner' | 'packs' | 'page'>): Promise<Along> {
  const packs: SitePack[] = []
  for (const number of await store.numbers(owner)) {
    const pack = number === shown?.number ? shown : await store.pack(owner, number)
    if (pack) packs.push(pack)
  }
  const ways = await loadOpening()
  return { packs, projects: await store.projects(owner), used: await numbersUsed(page), ways, isPart: false }
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
