import { and, asc, eq, like, max } from 'drizzle-orm'
import { schema } from '@/db/client'
import type { StreamId, StreamKind } from '@/lib/domain/facts/fact'
import type { Store, TenantId } from './store'

/** Every stream of a kind with its length, by name. */
export async function listStreams(
  store: Store,
  tenant: TenantId,
  kind: StreamKind,
): Promise<{ stream: StreamId; length: number }[]> {
  const { facts } = schema
  const rows = await store.db.queries
    .select({ stream: facts.stream, length: max(facts.position) })
    .from(facts)
    .where(and(eq(facts.tenant, tenant), like(facts.stream, `${kind}:%`)))
    .groupBy(facts.stream)
    .orderBy(asc(facts.stream))
  return rows.map((row) => ({ stream: row.stream as StreamId, length: row.length ?? 0 }))
}
