import { v7 as makeId } from 'uuid'
import { FactId, type PersonId, streamOf } from '@/lib/domain/facts/fact'
import type { BODIES, BodyOf } from '@/lib/domain/facts/fact-kinds'
import { ofKind } from '@/lib/domain/fold/order-facts'
import type { Moment } from '@/lib/domain/time'
import { parseVkey, type Vkey } from '@/lib/evidence/vkey'
import { appendFacts } from '@/lib/server/store/append-facts'
import { loadStream } from '@/lib/server/store/load-stream'
import type { Store, TenantId } from '@/lib/server/store/store'
import { LogBroken } from './log-broken'

export const LOG_KEY_STREAM = streamOf('key', 'log')
export const SIGNATURE_STREAM = streamOf('key', 'signature')

/** Which stream a kind of key fact stands in. */
const STREAM_OF = { 'log-key-taken': LOG_KEY_STREAM, 'signing-certificate-taken': SIGNATURE_STREAM } as const

type KeyKind = keyof typeof BODIES.key

/** The log keys that a tenant took, in order, and the length of their stream. @throws StoredFactBroken */
export async function loadKeysTaken(
  store: Store,
  tenant: TenantId,
): Promise<{ taken: BodyOf<'log-key-taken'>[]; present: Vkey | null; length: number }> {
  const { facts } = await loadStream(store, tenant, LOG_KEY_STREAM)
  const taken = facts.flatMap((fact) => (fact.kind === 'log-key-taken' ? [fact.body] : []))
  const last = taken.at(-1)
  const vkey = last ? parseVkey(last.vkey) : null
  if (vkey && !vkey.ok) throw new LogBroken('key-wrong', `The log names a key that is none: ${vkey.error.problem}.`)
  return { taken, present: vkey?.value ?? null, length: facts.length }
}

/** The certificate that signs dossiers now; null before the first. @throws StoredFactBroken */
export async function loadSigningCertificate(
  store: Store,
  tenant: TenantId,
): Promise<{ body: BodyOf<'signing-certificate-taken'> | null; length: number }> {
  const { facts } = await loadStream(store, tenant, SIGNATURE_STREAM)
  return { body: ofKind(facts, 'signing-certificate-taken').at(-1)?.body ?? null, length: facts.length }
}

/**
 * Append a key fact behind the stream's `length` that the caller saw. False when somebody else was first.
 * @throws LogBroken `tenant-unknown`; Error when the fact is refused, which is a bug
 */
export async function appendKeyFact<K extends KeyKind>(
  store: Store,
  tenant: TenantId,
  fact: { kind: K; body: BodyOf<K>; actor: PersonId; length: number; receivedAt?: Moment | undefined },
): Promise<boolean> {
  const at = fact.receivedAt ?? store.now()
  const stream = STREAM_OF[fact.kind]
  const json = { ...envelopeOf(at, fact.actor), stream, kind: fact.kind, body: fact.body }
  const appended = await appendFacts(store, tenant, [json], {
    receivedBy: fact.actor,
    expectHeads: [{ stream, length: fact.length }],
    ...(fact.receivedAt ? { receivedAt: fact.receivedAt } : {}),
  })
  if (appended.ok) return true
  if (appended.error.code === 'heads-moved') return false
  if (appended.error.code === 'tenant-unknown')
    throw new LogBroken('tenant-unknown', 'There is no such organisation in this store.')
  throw new Error(`A fact of the log's keys was refused: ${JSON.stringify(appended.error)}`)
}

function envelopeOf(at: Moment, actor: PersonId) {
  return {
    v: 1,
    id: FactId.parse(makeId()),
    observedAt: at,
    observedBy: actor,
    enteredAt: at,
    enteredBy: actor,
    device: { id: 'server', clockOffsetMs: 0 },
  }
}
