import { once } from 'node:events'
import type { Writable } from 'node:stream'
import { and, asc, eq, gte, lt } from 'drizzle-orm'
import { schema } from '@/db/client'
import type { PersonId } from '@/lib/domain/facts/fact'
import { canonicalBytes } from '@/lib/evidence/canonical-bytes'
import type { Store, TenantId } from '@/lib/server/store/store'
import { checkpointNow, type TakenCheckpoint } from './checkpoint-now'
import { leafOfRow } from './leaf-of-row'
import { LogBroken } from './log-broken'
import { MACHINE } from './machine'

const ROWS_AT_ONCE = 500

/**
 * Write a tenant's whole log as lines (FORMAT.md section 6) and give the checkpoint that closes it. The facts' bytes go out as stored: a changed fact is for the
 * checker to find. The stream is left open. `actor` takes the first log key when there is none.
 * @throws LogBroken as `checkpointNow` does; Error when the stream fails
 */
export async function exportLog(
  store: Store,
  tenant: TenantId,
  stream: Writable,
  actor: PersonId = MACHINE,
): Promise<TakenCheckpoint> {
  const checkpoint = await checkpointNow(store, tenant, actor)
  const { origin, size } = checkpoint
  await writeLine(stream, canonicalBytes({ kind: 'underwrap log', origin, size, tenant, v: 1 }))
  for (let next = 0; next < size; ) {
    const rows = await rowsFrom(store, tenant, next, size)
    if (rows.length === 0) throw new LogBroken('facts-missing', `The log lacks leaf ${next}.`)
    for (const row of rows) {
      if (row.leaf !== next) throw new LogBroken('facts-missing', `The log lacks leaf ${next}.`)
      await writeLine(stream, leafOfRow(tenant, row))
      await writeLine(stream, row.bytes)
      next += 1
    }
  }
  await writeLine(stream, canonicalBytes(checkpoint.text))
  return checkpoint
}

function rowsFrom(store: Store, tenant: TenantId, from: number, size: number) {
  const { facts } = schema
  const { leaf, stream, position, bytes, sha256, receivedAt, receivedBy } = facts
  return store.db.queries
    .select({ leaf, stream, position, bytes, sha256, receivedAt, receivedBy })
    .from(facts)
    .where(and(eq(facts.tenant, tenant), gte(leaf, from), lt(leaf, size)))
    .orderBy(asc(leaf))
    .limit(ROWS_AT_ONCE)
}

async function writeLine(stream: Writable, bytes: Uint8Array): Promise<void> {
  if (stream.errored) throw stream.errored
  stream.write(bytes)
  if (!stream.write('\n')) await once(stream, 'drain')
}
