import type { Captured, DeviceStated } from '@/lib/capture/outbox/outbox-terms'
import { FactId, PersonId, type Sha256, StreamId } from '@/lib/domain/facts/fact'
import { type BodyOf, type Fact, type FactOf, parseFact } from '@/lib/domain/facts/fact-kinds'
import type { Heads, Scope } from '@/lib/domain/facts/repair-bodies'
import type { Meaning, Party, Role } from '@/lib/domain/roles'
import { partyOfRole, roleOfParty } from '@/lib/domain/signing/signing-roles'
import type { Moment } from '@/lib/domain/time'
import { canonicalBytes } from '@/lib/evidence/canonical-bytes'
import { deviceStatement } from '@/lib/evidence/device-statement'
import { hexDigestOf } from '@/lib/evidence/digest'
import { signBytes } from './device-key'
import type { KeptKey } from './key-ring'

/** 64 zero bytes: stands in the place of the key's signature until it is made, and is no part of what is signed. */
const UNSIGNED = `${'A'.repeat(86)}==`

/** Who signs: the holder of the key, or a client in person whom the holder of the key sees sign. `drawing` is the digest of the drawn signature. */
export type DeviceSigner = { by: 'key' } | { by: 'in person'; person: string; name: string; drawing: string | null }

export type SigningPlace = {
  stream: string
  point: string
  attempt: number
  /** What is signed: facts with the digests of their bytes, and originals of photos whose facts are not made yet. */
  covers: readonly { fact: string; sha256: string }[]
  photos: readonly string[]
  at: Moment
  device: DeviceStated
  isOffline: boolean
}

/** Digest of a fact as the server will keep it. */
export function digestOnDevice(fact: Fact): Sha256 {
  return hexDigestOf(canonicalBytes(fact))
}

/**
 * A signature made with this device's key, as a statement for the outbox: `sign-on-device`.
 * @param ids id of the signature's fact
 * @throws RangeError when what is to be signed has no form of a signature
 */
export async function signHere(
  key: KeptKey,
  signer: DeviceSigner,
  place: SigningPlace,
  said: { id: string; meaning: Meaning; role: Role },
): Promise<Captured & { id: string }> {
  const signed = await makeSigned(key, signer, place, said)
  const { id, stream, body, observedAt, enteredAt, observedBy, device } = signed
  return {
    command: 'sign-on-device',
    id,
    device,
    input: { stream, body, signer: observedBy, observedAt, enteredAt },
  }
}

/**
 * A release with its signature, made with this device's key, as a statement for the outbox: `release-on-device`.
 * @param heads how many facts of the repair were seen
 * @throws RangeError when what is to be released or signed has no such form
 */
export async function releaseHere(
  key: KeptKey,
  signer: DeviceSigner,
  place: SigningPlace,
  said: { id: string; signatureId: string; party: Party; scope: Scope; heads: Heads; remark: string },
): Promise<Captured & { id: string }> {
  const { party, scope, heads, remark } = said
  const release = parsed(
    envelopeOf(key, signer, place, said.id, 'released', {
      point: place.point,
      attempt: place.attempt,
      party,
      scope,
      heads,
      ...(remark.trim() ? { remark: remark.trim() } : {}),
    }),
  )
  const signature = { id: said.signatureId, meaning: 'released', role: roleOfParty(party) } as const
  return signedWithin('release-on-device', release, key, signer, place, signature)
}

/**
 * An acceptance of the repair with the inspector's signature, made with this device's key, as a statement for the outbox: `accept-on-device`. `place` is the attempt of the closing records.
 * @throws RangeError when what is accepted or signed has no such form
 */
export async function acceptHere(
  key: KeptKey,
  place: SigningPlace,
  said: { id: string; signatureId: string; body: BodyOf<'accepted'> },
): Promise<Captured & { id: string }> {
  const signer = { by: 'key' } as const
  const accepted = parsed(envelopeOf(key, signer, place, said.id, 'accepted', said.body))
  const signature = { id: said.signatureId, meaning: 'accepted', role: 'inspector' } as const
  return signedWithin('accept-on-device', accepted, key, signer, place, signature)
}

/** A decision as a statement for the outbox that brings its signature, which covers the decision first. */
async function signedWithin(
  command: Captured['command'],
  decision: Fact,
  key: KeptKey,
  signer: DeviceSigner,
  place: SigningPlace,
  signature: { id: string; meaning: Meaning; role: Role },
): Promise<Captured & { id: string }> {
  const covers = [{ fact: decision.id, sha256: digestOnDevice(decision) }, ...place.covers]
  const signed = await makeSigned(key, signer, { ...place, covers }, signature)
  const { id, stream, body, observedAt, enteredAt, observedBy, device } = decision
  return {
    command,
    id,
    device,
    input: {
      stream,
      body,
      signature: { id: signed.id, body: signed.body },
      signer: observedBy,
      observedAt,
      enteredAt,
    },
  }
}

async function makeSigned(
  key: KeptKey,
  signer: DeviceSigner,
  place: SigningPlace,
  { id, meaning, role }: { id: string; meaning: Meaning; role: Role },
): Promise<FactOf<'signed'>> {
  const { point, attempt, covers, photos, isOffline } = place
  const bodyWith = (signature: string) => {
    const proof = { key: key.fact, gate: 'PIN', offline: isOffline, signature }
    return {
      meaning,
      point,
      attempt,
      role,
      name: signer.by === 'key' ? key.name : signer.name,
      party: partyOfRole(role),
      covers: [...covers],
      ...(photos.length > 0 ? { photos: [...photos] } : {}),
      method:
        signer.by === 'key'
          ? { kind: 'device', proof }
          : { kind: 'in person', witness: key.person, ...(signer.drawing ? { drawing: signer.drawing } : {}), proof },
    }
  }
  const draft = parsed(envelopeOf(key, signer, place, id, 'signed', bodyWith(UNSIGNED))) as FactOf<'signed'>
  const signature = await signBytes(key.privateKey, deviceStatement(draft))
  return parsed(envelopeOf(key, signer, place, id, 'signed', bodyWith(signature))) as FactOf<'signed'>
}

function envelopeOf(
  key: KeptKey,
  signer: DeviceSigner,
  { stream, at, device }: SigningPlace,
  id: string,
  kind: string,
  body: unknown,
) {
  const by = PersonId.parse(signer.by === 'key' ? key.person : signer.person)
  return {
    v: 1,
    id: FactId.parse(id),
    stream: StreamId.parse(stream),
    kind,
    observedAt: at,
    observedBy: by,
    enteredAt: at,
    enteredBy: by,
    device,
    body,
  }
}

function parsed(json: unknown): Fact {
  const fact = parseFact(json)
  if (!fact.ok) throw new RangeError(`no such fact: ${JSON.stringify(fact.error.faults)}`)
  return fact.value
}
