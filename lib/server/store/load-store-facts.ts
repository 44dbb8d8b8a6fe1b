import { listStreams } from './list-streams'
import { type LoadedFacts, loadStreams } from './load-stream'
import type { Store, TenantId } from './store'

const STORE_KINDS = ['batch', 'instrument', 'person'] as const

/** Load the facts of every batch, instrument and person of a tenant: what a point form may name. @throws StoredFactBroken */
export async function loadStoreFacts(store: Store, tenant: TenantId): Promise<LoadedFacts> {
  const streams = await Promise.all(STORE_KINDS.map((kind) => listStreams(store, tenant, kind)))
  return loadStreams(
    store,
    tenant,
    streams.flat().map((one) => one.stream),
  )
}
