import type { PersonId } from '@/lib/domain/facts/fact'
import { done, type Result, refused } from '@/lib/domain/result'
import type { Moment } from '@/lib/domain/time'
import { shortDigest } from '@/lib/evidence/checkpoint'
import { parseFactBytes } from '@/lib/evidence/fact-of-bytes'
import { parseLeaf } from '@/lib/evidence/leaf'
import type { Desk } from '@/lib/server/commands/desk'
import type { Refusal } from '@/lib/server/commands/refusal'
import { checkpointNow, type TakenCheckpoint } from '@/lib/server/log/checkpoint-now'
import { LOG_KEY_STREAM } from '@/lib/server/log/key-facts'
import { loadEvidence } from '@/lib/server/log/load-evidence'
import { LogBroken } from '@/lib/server/log/log-broken'
import { inclusionProofs } from '@/lib/server/log/proofs'
import { StoredFactBroken } from '@/lib/server/store/load-stream'
import { loadTenant } from '@/lib/server/store/tenants'
import { AUDIT_BARRED, type TrailReach, trailReachOf } from './audit-reach'
import { loadNames, type ReadingDesk } from './reading-desk'

/** A fact with all that shows it in the log: exact bytes of fact and leaf as text, leaf number, inclusion proof in base64. */
export type FactInLog = { index: number; bytes: string; leaf: string; proof: string[] }

/** The log's head with the history of its keys, each key fact with its proof: what a browser checks by itself. */
export type LogNow = { checkpoint: TakenCheckpoint; keys: FactInLog[] }

export type KeyLine = {
  fact: string
  vkey: string
  index: number
  takenAt: Moment
  takenBy: string
  reason: string
  isEndorsed: boolean
}
export type AuditHead = {
  log: LogNow
  shortDigest: string
  keyLines: KeyLine[]
  organisation: string
  reader: string
  takenAt: Moment
  reach: TrailReach
}
export type AuditFault = Refusal | { code: 'log-broken'; message: string }

/**
 * The log's head now, signed, and its keys. Refuses `not-allowed` for who reads no record as a whole, and `log-broken` when the log cannot be signed:
 * its key is missing, or it no longer contains what it said before.
 */
export async function loadAuditHead({ desk, actor }: ReadingDesk): Promise<Result<AuditHead, AuditFault>> {
  const reach = await trailReachOf(desk)
  if (!reach) return refused(AUDIT_BARRED)
  const log = await logNow(desk)
  if (!log.ok) return log
  const tenant = await loadTenant(desk.store, actor.tenant)
  return done({
    log: log.value,
    shortDigest: shortDigest(new Uint8Array(Buffer.from(log.value.checkpoint.root, 'base64'))),
    keyLines: keyLinesOf(log.value, await loadNames(desk)),
    organisation: tenant?.name ?? '',
    reader: actor.name,
    takenAt: desk.now(null),
    reach,
  })
}

/** Sign the head of the actor's log and gather its keys. Refuses `log-broken`. The caller has authorised. */
export async function logNow({ store, actor }: Desk): Promise<Result<LogNow, { code: 'log-broken'; message: string }>> {
  try {
    const checkpoint = await checkpointNow(store, actor.tenant, actor.person)
    const evidence = await loadEvidence(store, actor.tenant, [LOG_KEY_STREAM], checkpoint.size)
    const proofs = await inclusionProofs(
      store,
      actor.tenant,
      evidence.map((one) => one.leaf),
      checkpoint.size,
    )
    const keys = evidence.map(
      (one, at): FactInLog => ({
        index: one.leaf,
        bytes: textOf(one.factBytes),
        leaf: textOf(one.leafBytes),
        proof: proofs[at]?.proof ?? [],
      }),
    )
    return done({ checkpoint, keys })
  } catch (error) {
    if (error instanceof LogBroken || error instanceof StoredFactBroken)
      return refused({ code: 'log-broken', message: error.message })
    throw error
  }
}

/** Stored bytes as text that encodes to the same bytes; bytes that are no UTF-8 give a text that does not. */
export function textOf(bytes: Uint8Array): string {
  return new TextDecoder('utf-8', { ignoreBOM: true }).decode(bytes)
}

function keyLinesOf({ keys }: LogNow, names: Readonly<Record<PersonId, string>>): KeyLine[] {
  return keys.flatMap((one): KeyLine[] => {
    const fact = parseFactBytes(new TextEncoder().encode(one.bytes))
    const leaf = parseLeaf(new TextEncoder().encode(one.leaf))
    if (!fact.ok || !leaf.ok || fact.value.kind !== 'log-key-taken') return []
    const { vkey, reason, endorsement } = fact.value.body
    const { receivedBy } = leaf.value
    return [
      {
        fact: fact.value.id,
        vkey,
        index: one.index,
        takenAt: leaf.value.receivedAt,
        takenBy: names[receivedBy] ?? (receivedBy === 'server' ? 'the server’s own machine' : receivedBy),
        reason,
        isEndorsed: endorsement !== null,
      },
    ]
  })
}
