import type { StreamId } from '@/lib/domain/facts/fact'
import { foldRepair } from '@/lib/domain/fold/fold-repair'
import type { RepairState } from '@/lib/domain/fold/repair-state'
import { instantOf, type Moment } from '@/lib/domain/time'
import { type RepairReach, reachOfRepairs } from './load-repair-facts'
import { type LoadedFacts, loadStreams } from './load-stream'
import { type AlikePhoto, likenessOfRepair } from './photo-likeness'
import { standsAt } from './stands-at'
import type { Store, TenantId } from './store'

/** A repair as it stands, with the facts it was folded from, their receipts and digests. */
export type LoadedRepair = LoadedFacts & { state: RepairState; heads: { stream: StreamId; length: number }[] }

type Kept = {
  heads: string
  loaded: LoadedFacts
  photoMark: string
  likeness: AlikePhoto[]
  folded: Map<Moment, RepairState>
}
const kept = new WeakMap<Store['db'], Map<string, Kept>>()
const REPAIRS_KEPT = 400
const FOLDS_KEPT = 4

/**
 * Load a repair and fold it at a moment (the present one unless said). Null when it has no facts, or was not opened by then.
 * @throws StoredFactBroken
 */
export async function loadRepair(
  store: Store,
  tenant: TenantId,
  repair: StreamId,
  asOf: Moment = store.now(),
): Promise<LoadedRepair | null> {
  const reach = (await reachOfRepairs(store, tenant, repair)).get(repair)
  if (!reach) return null
  const one = await keptFor(store, tenant, repair, reach)
  const state = one.folded.get(asOf) ?? foldKept(one, repair, asOf)
  return state && { ...one.loaded, state, heads: headsOf(reach) }
}

/**
 * Every repair of a tenant that was opened by now, by stream. New facts show at once; where time alone has passed a state may be up to a minute old,
 * but never across the end of a window, a day, or the time of a fact. @throws StoredFactBroken
 */
export async function loadRepairs(store: Store, tenant: TenantId): Promise<RepairState[]> {
  const asOf = store.now()
  const states: RepairState[] = []
  for (const [repair, reach] of await reachOfRepairs(store, tenant, 'all')) {
    const one = await keptFor(store, tenant, repair, reach)
    const state =
      [...one.folded.values()].findLast((known) => standsAt(known, one.loaded.facts, asOf)) ??
      foldKept(one, repair, asOf)
    if (state) states.push(state)
  }
  return states
}

function foldKept(one: Kept, repair: StreamId, asOf: Moment): RepairState | null {
  const { facts, receipts, sha256Of } = one.loaded
  const isOpened = facts.some(
    (fact) => fact.stream === repair && fact.kind === 'repair-opened' && instantOf(fact.observedAt) <= instantOf(asOf),
  )
  if (!isOpened) return null
  const state = foldRepair(facts, repair, asOf, {
    receipts: Object.fromEntries(receipts),
    likeness: one.likeness,
    sha256Of: (fact) => sha256Of.get(fact),
  })
  if (one.folded.size >= FOLDS_KEPT) one.folded.clear()
  one.folded.set(asOf, state)
  return state
}

function headsOf({ streams }: RepairReach): LoadedRepair['heads'] {
  return [...streams].map(([stream, length]) => ({ stream, length }))
}

/** Facts and likeness of photos as kept from before, where neither can have changed since; else read again. */
async function keptFor(store: Store, tenant: TenantId, repair: StreamId, reach: RepairReach): Promise<Kept> {
  const all = kept.get(store.db) ?? new Map<string, Kept>()
  kept.set(store.db, all)
  const name = `${tenant} ${repair}`
  const known = all.get(name)
  const heads = JSON.stringify(headsOf(reach))
  const { photoMark } = reach
  if (known && known.heads === heads && known.photoMark === photoMark) return known
  const loaded = known?.heads === heads ? known.loaded : await loadStreams(store, tenant, [...reach.streams.keys()])
  const likeness = await likenessOfRepair(store, tenant, repair)
  const isSame = known?.heads === heads && JSON.stringify(known.likeness) === JSON.stringify(likeness)
  const fresh: Kept = { heads, loaded, photoMark, likeness, folded: isSame ? known.folded : new Map() }
  if (all.size >= REPAIRS_KEPT && !known) all.clear()
  all.set(name, fresh)
  return fresh
}
