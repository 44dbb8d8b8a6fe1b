import { and, asc, eq, lt, sql } from 'drizzle-orm'
import { schema } from '@/db/client'
import { base64Of } from '@/lib/evidence/base64'
import { parseCheckpoint, type SignedCheckpoint, verifyCheckpoint } from '@/lib/evidence/checkpoint'
import { factOfBytes } from '@/lib/evidence/fact-of-bytes'
import { parseOrigin } from '@/lib/evidence/origin'
import { parseVkey, type Vkey } from '@/lib/evidence/vkey'
import { rebuildTreeIn } from '@/lib/server/log/extend-tree'
import { LOG_KEY_STREAM } from '@/lib/server/log/key-facts'
import { hashesOfRanges } from '@/lib/server/log/tree-nodes'
import type { Transaction } from '@/lib/server/store/heads'
import type { TenantId } from '@/lib/server/store/store'
import { BackupRefused } from './backup-refusal'
import type { BackupManifest } from './manifest'

type Head = BackupManifest['heads'][number]

/**
 * Prove that a restored log is the one that was backed up: every fact's bytes give its digest, and the tree computed from the rows has exactly the head that the backup's checkpoint
 * says, signed by the log's own key. Fills the tree. @throws BackupRefused `head-differs`
 */
export async function verifyRestored(tx: Transaction, head: Head, storeId: string): Promise<void> {
  const checkpoint = parseCheckpoint(head.checkpoint)
  if (!checkpoint.ok) throw new BackupRefused('damaged', 'The backup holds a checkpoint that is none.')
  const { origin, size, root } = checkpoint.value
  const { facts } = schema
  const broken = await tx
    .select({ stream: facts.stream, position: facts.position })
    .from(facts)
    .where(and(eq(facts.tenant, head.tenant), sql`encode(sha256(${facts.bytes}), 'hex') <> ${facts.sha256}`))
    .limit(1)
  const [fact] = broken
  if (fact) throw differs(`fact ${fact.position} of ${fact.stream} does not give its digest`)
  const leafCount = await rebuildTreeIn(tx, head.tenant).catch((cause: Error) => {
    throw differs(cause.message)
  })
  const named = parseOrigin(origin)
  if (named?.storeId !== storeId || named.tenant !== head.tenant) throw differs('its checkpoint is of another log')
  if (leafCount !== size) throw differs(`it has ${leafCount} facts, its checkpoint says ${size}`)
  if ((await rootIn(tx, head.tenant, size)) !== base64Of(root)) throw differs('its facts do not give its checkpoint')
  const vkey = (await keysAt(tx, head.tenant, size)).at(-1)
  if (vkey?.text !== head.vkey || !verifyCheckpoint(checkpoint.value, vkey))
    throw differs('its checkpoint is not signed by its key')
}

/**
 * Refuse a restored store that does not contain a head that somebody holds.
 * @throws BackupRefused `older-than-known`, `known-differs`, `known-unreadable`
 */
export async function verifyKnown(tx: Transaction, known: SignedCheckpoint, heads: readonly Head[]): Promise<void> {
  const tenant = parseOrigin(known.origin)?.tenant ?? ''
  const own = heads.flatMap((head) => {
    const checkpoint = parseCheckpoint(head.checkpoint)
    return checkpoint.ok && checkpoint.value.origin === known.origin ? [checkpoint.value] : []
  })[0]
  if (!own) throw new BackupRefused('known-differs', `The backup holds no log of the origin ${known.origin}.`)
  if (known.size > own.size)
    throw new BackupRefused(
      'older-than-known',
      `This backup is older than the checkpoint you know: it ends at ${own.size} facts, the checkpoint is over ${known.size}, so ${known.size - own.size} would be missing. Nothing was restored; leave out --known to restore it nevertheless.`,
    )
  if ((await rootIn(tx, tenant, known.size)) !== base64Of(known.root))
    throw new BackupRefused(
      'known-differs',
      'The backup does not contain what the checkpoint you know says: the log was changed.',
    )
  if (!(await keysAt(tx, tenant, Number.MAX_SAFE_INTEGER)).some((vkey) => verifyCheckpoint(known, vkey)))
    throw new BackupRefused('known-unreadable', 'The checkpoint you know is signed by no key of this log.')
}

async function rootIn(tx: Transaction, tenant: TenantId, size: number): Promise<string> {
  const [root] = await hashesOfRanges(tx, tenant, [{ from: 0, to: size }])
  return root ? base64Of(root) : ''
}

async function keysAt(tx: Transaction, tenant: TenantId, size: number): Promise<Vkey[]> {
  const { facts } = schema
  const rows = await tx
    .select({ bytes: facts.bytes })
    .from(facts)
    .where(and(eq(facts.tenant, tenant), eq(facts.stream, LOG_KEY_STREAM), lt(facts.leaf, size)))
    .orderBy(asc(facts.position))
  return rows.flatMap(({ bytes }) => {
    const fact = factOfBytes(bytes)
    const vkey = fact.kind === 'log-key-taken' ? parseVkey(fact.body.vkey) : null
    return vkey?.ok ? [vkey.value] : []
  })
}

function differs(why: string): BackupRefused {
  return new BackupRefused('head-differs', `The backup is not what was backed up: ${why}. Nothing was restored.`)
}
