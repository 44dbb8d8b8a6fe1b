import type { StreamId } from '@/lib/domain/facts/fact'
import { foldRepair } from '@/lib/domain/fold/fold-repair'
import type { RepairState } from '@/lib/domain/fold/repair-state'
import { instantOf, type Moment } from '@/lib/domain/time'
import { streamsOfRepair } from './load-repair-facts'
import { type LoadedFacts, loadStreams } from './load-stream'
import { likenessOfRepair } from './photo-likeness'
import type { Store, TenantId } from './store'

/** A repair as it stands, with the facts it was folded from, their receipts and digests. */
export type LoadedRepair = LoadedFacts & { state: RepairState; heads: { stream: StreamId; length: number }[] }

type Kept = { heads: string; loaded: LoadedFacts; likeness: string; folded: Map<Moment, RepairState> }
const kept = new WeakMap<Store['db'], Map<string, Kept>>()
const REPAIRS_KEPT = 60
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
  const streams = await streamsOfRepair(store, tenant, repair)
  if (!streams.has(repair)) return null
  const likeness = await likenessOfRepair(store, tenant, repair)
  const heads = [...streams].map(([stream, length]) => ({ stream, length }))
  const one = await keptFor(store, tenant, repair, JSON.stringify(heads), JSON.stringify(likeness), [...streams.keys()])
  const { facts, receipts, sha256Of } = one.loaded
  const isOpened = facts.some(
    (fact) => fact.stream === repair && fact.kind === 'repair-opened' && instantOf(fact.observedAt) <= instantOf(asOf),
  )
  if (!isOpened) return null
  const state =
    one.folded.get(asOf) ??
    foldRepair(facts, repair, asOf, {
      receipts: Object.fromEntries(receipts),
      likeness,
      sha256Of: (fact) => sha256Of.get(fact),
    })
  if (one.folded.size >= FOLDS_KEPT) one.folded.clear()
  one.folded.set(asOf, state)
  return { state, facts, receipts, sha256Of, heads }
}

async function keptFor(
  store: Store,
  tenant: TenantId,
  repair: StreamId,
  heads: string,
  likeness: string,
  streams: StreamId[],
): Promise<Kept> {
  const all = kept.get(store.db) ?? new Map<string, Kept>()
  kept.set(store.db, all)
  const name = `${tenant} ${repair}`
  const known = all.get(name)
  if (known && known.heads === heads && known.likeness === likeness) return known
  const loaded = known?.heads === heads ? known.loaded : await loadStreams(store, tenant, streams)
  const fresh: Kept = { heads, loaded, likeness, folded: new Map() }
  if (all.size >= REPAIRS_KEPT) all.clear()
  all.set(name, fresh)
  return fresh
}
