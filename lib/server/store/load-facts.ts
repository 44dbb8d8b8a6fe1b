import { and, eq, like } from 'drizzle-orm'
import { schema } from '@/db/client'
import type { FactId, Sha256, StreamKind } from '@/lib/domain/facts/fact'
import type { Fact, FactKind } from '@/lib/domain/facts/fact-kinds'
import { listStreams } from './list-streams'
import { type LoadedFacts, loadStreams, parseRow } from './load-stream'
import type { Store, TenantId } from './store'

/** One fact of a tenant by its id, with the digest of its bytes; null when the tenant has none of that id. @throws StoredFactBroken */
export async function loadFact(
  store: Store,
  tenant: TenantId,
  id: FactId,
): Promise<{ fact: Fact; sha256: Sha256 } | null> {
  const { facts } = schema
  const [row] = await store.db.queries
    .select()
    .from(facts)
    .where(and(eq(facts.tenant, tenant), eq(facts.id, id)))
  return row ? parseRow(row) : null
}

/** Every fact of every stream of one kind, by stream and position. @throws StoredFactBroken */
export async function loadStreamsOfKind(store: Store, tenant: TenantId, kind: StreamKind): Promise<LoadedFacts> {
  return loadStreams(
    store,
    tenant,
    (await listStreams(store, tenant, kind)).map((one) => one.stream),
  )
}

/** Every fact of one kind, in streams of one kind where that is said. @throws StoredFactBroken */
export async function loadFactsOfKind(
  store: Store,
  tenant: TenantId,
  kind: FactKind,
  of?: StreamKind,
): Promise<Fact[]> {
  const { facts } = schema
  const rows = await store.db.queries
    .select()
    .from(facts)
    .where(and(eq(facts.tenant, tenant), eq(facts.kind, kind), of ? like(facts.stream, `${of}:%`) : undefined))
    .orderBy(facts.leaf)
  return rows.map((row) => parseRow(row).fact)
}
