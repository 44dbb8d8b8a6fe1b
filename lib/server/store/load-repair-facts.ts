import { sql } from 'drizzle-orm'
import type { StreamId } from '@/lib/domain/facts/fact'
import { type LoadedFacts, loadStreams } from './load-stream'
import type { Store, TenantId } from './store'

/**
 * Streams that a repair's fold reads, with their lengths: its own; what it cites (specification, plan, project, batches, instruments,
 * persons, devices); what cites it (nonconformances, dossier); and what those cite. Other repairs are left out.
 */
export async function streamsOfRepair(
  store: Store,
  tenant: TenantId,
  repair: StreamId,
): Promise<Map<StreamId, number>> {
  const answer = await store.db.queries.execute<{ stream: StreamId; length: number }>(sql`
    with near as (
      select to_stream as stream from fact_cites where tenant = ${tenant} and from_stream = ${repair}
      union select from_stream from fact_cites where tenant = ${tenant} and to_stream = ${repair}
    ), around as (
      select stream from near where stream not like 'repair:%'
      union select c.to_stream from fact_cites c join near on c.from_stream = near.stream and near.stream not like 'repair:%'
        where c.tenant = ${tenant} and c.to_stream not like 'repair:%'
      union select ${repair}
    )
    select a.stream, max(f.position) as length from around a join facts f on f.tenant = ${tenant} and f.stream = a.stream group by a.stream order by a.stream`)
  return new Map(answer.rows.map((row) => [row.stream, row.length]))
}

/** Load every fact that the fold of a repair reads. Empty when the repair has none. @throws StoredFactBroken */
export async function loadRepairFacts(store: Store, tenant: TenantId, repair: StreamId): Promise<LoadedFacts> {
  const streams = await streamsOfRepair(store, tenant, repair)
  return loadStreams(store, tenant, streams.has(repair) ? [...streams.keys()] : [])
}
