import { PersonId, Sha256, StreamId } from '@/lib/domain/facts/fact'
import { Moment } from '@/lib/domain/time'
import { leafBytes } from '@/lib/evidence/leaf'
import type { TenantId } from '@/lib/server/store/store'

/** The leaf's bytes of a stored fact. @throws ZodError when a stored column is not what an append writes: somebody changed the database */
export function leafOfRow(
  tenant: TenantId,
  row: { stream: string; position: number; sha256: string; receivedAt: string; receivedBy: string },
): Uint8Array {
  return leafBytes({
    tenant,
    stream: StreamId.parse(row.stream),
    position: row.position,
    sha256: Sha256.parse(row.sha256),
    receivedAt: Moment.parse(row.receivedAt),
    receivedBy: PersonId.parse(row.receivedBy),
  })
}
