import { sql } from 'drizzle-orm'
import type { StreamId } from '@/lib/domain/facts/fact'
import { type LoadedFacts, loadStreams } from './load-stream'
import type { Store, TenantId } from './store'

/** What a repair's fold reads: its streams with their lengths, and a mark of the tenant's photos that moves when one is added. */
export type RepairReach = { streams: Map<StreamId, number>; photoMark: string }

/**
 * Streams that the fold of each repair reads, with their lengths: its own; what it cites (specification, plan, project, batches, instruments,
 * persons, devices); what cites it (nonconformances, dossier); and what those cite. Other repairs are left out. One round trip for all of them,
 * or for the one named.
 */
export async function reachOfRepairs(
  store: Store,
  tenant: TenantId,
  repair: StreamId | 'all',
): Promise<Map<StreamId, RepairReach>> {
  const name = repair === 'all' ? sql`like 'repair:%'` : sql`= ${repair}`
  const answer = await store.db.queries.execute<{
    repair: StreamId
    stream: StreamId
    length: number
    photos: string
  }>(sql`
    with near as (
      select from_stream as repair, to_stream as stream from fact_cites where tenant = ${tenant} and from_stream ${name}
      union select to_stream, from_stream from fact_cites where tenant = ${tenant} and to_stream ${name}
    ), around as (
      select repair, stream from near where stream not like 'repair:%'
      union select near.repair, c.to_stream from fact_cites c join near on c.from_stream = near.stream and near.stream not like 'repair:%'
        where c.tenant = ${tenant} and c.to_stream not like 'repair:%'
      union select stream, stream from facts where tenant = ${tenant} and stream ${name} and position = 1
    ), long as (
      select s.stream, max(f.position) as length from (select distinct stream from around) s
        join facts f on f.tenant = ${tenant} and f.stream = s.stream group by s.stream
    )
    select a.repair, a.stream, l.length, (select count(*)::text from photos where tenant = ${tenant}) as photos
      from around a join long l on l.stream = a.stream order by a.repair, a.stream`)
  const reach = new Map<StreamId, RepairReach>()
  for (const row of answer.rows) {
    const one = reach.get(row.repair) ?? { streams: new Map<StreamId, number>(), photoMark: row.photos }
    one.streams.set(row.stream, row.length)
    reach.set(row.repair, one)
  }
  for (const [of, { streams }] of reach) if (!streams.has(of)) reach.delete(of)
  return reach
}

/** Streams that one repair's fold reads, with their lengths; empty when it has no facts. */
export async function streamsOfRepair(
  store: Store,
  tenant: TenantId,
  repair: StreamId,
): Promise<Map<StreamId, number>> {
  return (await reachOfRepairs(store, tenant, repair)).get(repair)?.streams ?? new Map()
}

/** Load every fact that the fold of a repair reads. Empty when the repair has none. @throws StoredFactBroken */
export async function loadRepairFacts(store: Store, tenant: TenantId, repair: StreamId): Promise<LoadedFacts> {
  return loadStreams(store, tenant, [...(await streamsOfRepair(store, tenant, repair)).keys()])
}
