import { and, asc, eq, inArray, lt } from 'drizzle-orm'
import { schema } from '@/db/client'
import type { StreamId } from '@/lib/domain/facts/fact'
import { sha256Of } from '@/lib/evidence/sha256'
import { StoredFactBroken } from '@/lib/server/store/load-stream'
import type { Store, TenantId } from '@/lib/server/store/store'
import { leafOfRow } from './leaf-of-row'

/** A fact as evidence: its leaf number and the exact bytes of leaf and fact. */
export type EvidenceOfFact = { leaf: number; leafBytes: Uint8Array; factBytes: Uint8Array }

/** Every fact of the streams among the first `size` leaves of the log, in order of leaf, each fact's bytes checked against its digest. @throws StoredFactBroken */
export async function loadEvidence(
  store: Store,
  tenant: TenantId,
  streams: readonly StreamId[],
  size: number,
): Promise<EvidenceOfFact[]> {
  if (streams.length === 0) return []
  const { facts } = schema
  const { leaf, stream, position, bytes, sha256, receivedAt, receivedBy } = facts
  const rows = await store.db.queries
    .select({ leaf, stream, position, bytes, sha256, receivedAt, receivedBy })
    .from(facts)
    .where(and(eq(facts.tenant, tenant), inArray(stream, [...new Set(streams)]), lt(leaf, size)))
    .orderBy(asc(leaf))
  return rows.map((row) => {
    if (sha256Of(row.bytes) !== row.sha256) throw new StoredFactBroken(row.stream, row.position)
    return { leaf: row.leaf, leafBytes: leafOfRow(tenant, row), factBytes: new Uint8Array(row.bytes) }
  })
}
