import { and, eq } from 'drizzle-orm'
import { schema } from '@/db/client'
import type { StreamId } from '@/lib/domain/facts/fact'
import type { Fact } from '@/lib/domain/facts/fact-kinds'
import { parseRow } from '@/lib/server/store/load-stream'
import type { Store, TenantId } from '@/lib/server/store/store'

/** Every fact that cites a stream, in order of receipt. @throws StoredFactBroken */
export async function listCiting(store: Store, tenant: TenantId, stream: StreamId): Promise<Fact[]> {
  const { facts, factCites } = schema
  const rows = await store.db.queries
    .select({ stream: facts.stream, position: facts.position, bytes: facts.bytes, sha256: facts.sha256 })
    .from(facts)
    .innerJoin(factCites, and(eq(factCites.tenant, facts.tenant), eq(factCites.factId, facts.id)))
    .where(and(eq(facts.tenant, tenant), eq(factCites.toStream, stream)))
    .orderBy(facts.leaf)
  return rows.map((row) => parseRow(row).fact)
}
