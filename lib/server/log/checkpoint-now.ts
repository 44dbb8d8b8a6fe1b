import { and, desc, eq, sql } from 'drizzle-orm'
import { schema } from '@/db/client'
import type { PersonId } from '@/lib/domain/facts/fact'
import type { Moment } from '@/lib/domain/time'
import { base64Of } from '@/lib/evidence/base64'
import { signCheckpoint } from '@/lib/evidence/checkpoint'
import { parseRow } from '@/lib/server/store/load-stream'
import type { Store, TenantId } from '@/lib/server/store/store'
import { extendTree } from './extend-tree'
import { LOG_KEY_STREAM } from './key-facts'
import { LogBroken } from './log-broken'
import { type Log, openLog } from './open-log'
import { hashesOfRanges } from './tree-nodes'

/** A signed head of a tenant's log. `root` is base64, `text` the whole note, `vkey` the line of the key that signed it. */
export type TakenCheckpoint = { origin: string; size: number; root: string; text: string; vkey: string }

/**
 * Sign the head of a tenant's log as it stands, and keep it. The log is opened when it was not. `receivedAt` is for the demo's seed alone.
 * @throws LogBroken as `openLog` does, and `forked` when the log no longer contains what an earlier checkpoint said: then nothing is signed
 */
export async function checkpointNow(
  store: Store,
  tenant: TenantId,
  actor: PersonId,
  receivedAt?: Moment,
): Promise<TakenCheckpoint> {
  const log = await openLog(store, tenant, actor, receivedAt)
  const head = await headOf(store, tenant)
  // Another process took a new key meanwhile: it is the new key that signs over its own fact.
  if (head.vkey !== log.key.vkey.text) return checkpointNow(store, tenant, actor, receivedAt)
  return signHead(store, tenant, log, head.size)
}

/**
 * Sign and keep the head of the log at a size that it has reached; the key must be the one of that size.
 * @throws LogBroken `facts-missing` when the log is shorter, `forked` as `checkpointNow` does
 */
export async function signHead(store: Store, tenant: TenantId, log: Log, size: number): Promise<TakenCheckpoint> {
  await extendTree(store, tenant, size)
  const root = await rootAt(store, tenant, size)
  await demandNoFork(store, tenant, size)
  return keep(store, tenant, log, size, root)
}

/** Root of the tenant's log at a size that the stored tree has, in base64. @throws LogBroken `facts-missing` beyond it */
export async function rootAt(store: Store, tenant: TenantId, size: number): Promise<string> {
  const [root] = await hashesOfRanges(store.db.queries, tenant, [{ from: 0, to: size }])
  if (!root) throw new Error('a range has a hash')
  return base64Of(root)
}

/** Size of the log and its key at that size, as one snapshot. */
async function headOf(store: Store, tenant: TenantId): Promise<{ size: number; vkey: string }> {
  const { tenants, facts } = schema
  const [row] = await store.db.queries
    .select({
      size: tenants.leafCount,
      stream: facts.stream,
      position: facts.position,
      bytes: facts.bytes,
      sha256: facts.sha256,
    })
    .from(tenants)
    .innerJoin(facts, and(eq(facts.tenant, tenants.id), eq(facts.stream, LOG_KEY_STREAM)))
    .where(eq(tenants.id, tenant))
    .orderBy(desc(facts.position))
    .limit(1)
  const fact = row ? parseRow(row).fact : null
  if (!row || fact?.kind !== 'log-key-taken') throw new LogBroken('facts-missing', 'The log does not name its key.')
  return { size: row.size, vkey: fact.body.vkey }
}

/** The last head that was signed must still stand in the tree. */
async function demandNoFork(store: Store, tenant: TenantId, size: number): Promise<void> {
  const { checkpoints } = schema
  const [last] = await store.db.queries
    .select({ size: checkpoints.size, root: checkpoints.root })
    .from(checkpoints)
    .where(eq(checkpoints.tenant, tenant))
    .orderBy(desc(checkpoints.size))
    .limit(1)
  if (!last) return
  if (last.size > size) {
    // Another process may have signed a longer log since our size was read.
    const [now] = await store.db.queries
      .select({ size: schema.tenants.leafCount })
      .from(schema.tenants)
      .where(eq(schema.tenants.id, tenant))
    if (last.size <= (now?.size ?? 0)) return
    throw new LogBroken('forked', `A checkpoint over ${last.size} facts was signed, and the log now has ${size}.`)
  }
  if ((await rootAt(store, tenant, last.size)) !== last.root)
    throw new LogBroken(
      'forked',
      `The log no longer contains what the checkpoint over ${last.size} facts said. Run npm run underwrap -- check-store.`,
    )
}

async function keep(
  store: Store,
  tenant: TenantId,
  { origin, key }: Log,
  size: number,
  root: string,
): Promise<TakenCheckpoint> {
  const bytes = Buffer.from(root, 'base64')
  const note = signCheckpoint({ origin, size, root: new Uint8Array(bytes) }, key)
  const { checkpoints } = schema
  const [kept] = await store.db.queries
    .insert(checkpoints)
    .values({ tenant, size, root, note })
    .onConflictDoUpdate({ target: [checkpoints.tenant, checkpoints.size], set: { size: sql`${checkpoints.size}` } })
    .returning({ root: checkpoints.root })
  if (kept?.root !== root) throw new LogBroken('forked', `Another checkpoint over ${size} facts was signed earlier.`)
  return { origin, size, root, text: note, vkey: key.vkey.text }
}
