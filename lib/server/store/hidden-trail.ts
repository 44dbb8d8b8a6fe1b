import { sql } from 'drizzle-orm'
import type { StreamId } from '@/lib/domain/facts/fact'
import type { Store, TenantId } from './store'

/** Streams that belong to some projects: the projects' own, their repairs, and the nonconformances and dossiers that cite one of these repairs. */
export async function streamsOfProjects(
  store: Store,
  tenant: TenantId,
  projects: readonly StreamId[],
): Promise<StreamId[]> {
  if (projects.length === 0) return []
  const answer = await store.db.queries.execute<{ stream: StreamId }>(sql`
    with named as (select unnest(${sql.param([...projects])}::text[]) as stream
    ), repairs as (
      select distinct c.from_stream as stream from fact_cites c join named on named.stream = c.to_stream
        where c.tenant = ${tenant} and c.from_stream like 'repair:%'
    ), around as (
      select distinct c.from_stream as stream from fact_cites c join repairs on repairs.stream = c.to_stream
        where c.tenant = ${tenant} and (c.from_stream like 'nonconformance:%' or c.from_stream like 'dossier:%')
    )
    select stream from named union select stream from repairs union select stream from around`)
  return answer.rows.map((row) => row.stream)
}
