import { and, eq, inArray, max, sql } from 'drizzle-orm'
import { type Queries, schema } from '@/db/client'
import type { StreamId } from '@/lib/domain/facts/fact'
import type { Store, TenantId } from './store'

export type Transaction = Parameters<Parameters<Queries['transaction']>[0]>[0]

/** Number of facts in each stream; positions run from 1 without a gap, so the last position is the length. Unknown streams are absent. */
export async function headsIn(
  queries: Queries | Transaction,
  tenant: TenantId,
  streams: readonly StreamId[],
): Promise<Map<StreamId, number>> {
  if (streams.length === 0) return new Map()
  const { facts } = schema
  const rows = await queries
    .select({ stream: facts.stream, length: max(facts.position) })
    .from(facts)
    .where(and(eq(facts.tenant, tenant), inArray(facts.stream, [...new Set(streams)])))
    .groupBy(facts.stream)
  return new Map(rows.map((row) => [row.stream as StreamId, row.length ?? 0]))
}

/** Heads of the streams as a decision names them; a stream without facts has length 0. */
export async function headsOf(
  store: Store,
  tenant: TenantId,
  streams: readonly StreamId[],
): Promise<{ stream: StreamId; length: number }[]> {
  const heads = await headsIn(store.db.queries, tenant, streams)
  return [...new Set(streams)].sort().map((stream) => ({ stream, length: heads.get(stream) ?? 0 }))
}

/** Hold the streams against other writers until the transaction ends. Locks are taken in one order, so that writers never wait on each other in a ring. */
export async function lockStreams(tx: Transaction, tenant: TenantId, streams: readonly StreamId[]): Promise<void> {
  const names = [...new Set(streams)].map((stream) => `${tenant} ${stream}`)
  if (names.length === 0) return
  await tx.execute(
    sql`select pg_advisory_xact_lock(key) from (select distinct hashtextextended(name, 7719) as key from unnest(${sql.param(names)}::text[]) as name order by key) as keys`,
  )
}
