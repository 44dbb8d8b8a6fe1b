import { type FactId, type PersonId, type Sha256, StreamId } from '@/lib/domain/facts/fact'
import type { FactOf } from '@/lib/domain/facts/fact-kinds'
import { ofKind } from '@/lib/domain/fold/order-facts'
import { done, type Result, refused } from '@/lib/domain/result'
import type { DrawnSignature } from '@/lib/domain/signing/drawn-signature'
import { maySign, partyOfRole } from '@/lib/domain/signing/signing-roles'
import { dayOf } from '@/lib/domain/time'
import { isDeviceSigned } from '@/lib/evidence/is-device-signed'
import type { Actor } from '@/lib/server/auth/actor'
import { loadActorOfPerson } from '@/lib/server/auth/load-actor'
import type { Desk, KeptStream } from './desk'
import { keepDrawing } from './keep-drawing'
import type { Place } from './place-of'
import type { Refusal } from './refusal'

/**
 * Make sure that a signature made on a device holds: the key is registered there for the signer (signing in person: for the witness) and has not ended, the proof is its own, the role was the
 * signer's on the day of signing, the meaning is one of the role's, and every covered fact and photo is in the record as it was signed.
 * @param fresh digests of facts that come with the signature, such as the release that it signs
 * @returns the signer. Refuses `invalid`, `key-unknown`, `key-ended`, `key-proof-wrong`, `signer-unknown`, `signer-has-account`, `witness-is-signer`, `not-own-role`,
 * `meaning-not-for-role`, `covers-differ`
 */
export async function deviceSigner(
  desk: Desk,
  signed: FactOf<'signed'>,
  { kept, place, drawing }: { kept: KeptStream; place: Place; drawing: DrawnSignature | undefined },
  fresh: ReadonlyMap<FactId, Sha256> = new Map(),
): Promise<Result<Actor, Refusal>> {
  const { role, meaning, name, party, covers, photos } = signed.body
  const keyed = await keyedBy(desk, signed)
  if (!keyed.ok) return keyed
  const signer = await loadActorOfPerson(desk.store, desk.actor.tenant, signed.observedBy)
  if (!signer) return refused({ code: 'signer-unknown' })
  if (signed.body.method.kind === 'in person') {
    if (signer.person === keyed.value) return refused({ code: 'witness-is-signer' })
    if (signer.userId !== '') return refused({ code: 'signer-has-account' })
    if (role !== 'client') return refused({ code: 'not-own-role' })
    const sha256 = drawing && (await keepDrawing(desk, drawing))
    if (!sha256 || sha256 !== signed.body.method.drawing)
      return refused({
        code: 'invalid',
        fields: { drawing: ['is missing, or is not the drawing that was signed with'] },
      })
  }
  const day = dayOf(signed.observedAt)
  if (!signer.rolesOn(place.project, day).includes(role)) return refused({ code: 'not-own-role' })
  if (!maySign(role, meaning, signer.approvesOn(place.project, day, role)))
    return refused({ code: 'meaning-not-for-role', meaning, role })
  if (name !== signer.name || party !== partyOfRole(role))
    return refused({ code: 'invalid', fields: { 'body.name': ['is not the name or party of the signer'] } })
  const known = new Set(ofKind(kept.facts, 'photo-attached').map((fact) => fact.body.photo.sha256))
  const differing = [
    ...covers
      .filter((one) => (fresh.get(one.fact) ?? kept.sha256Of.get(one.fact)) !== one.sha256)
      .map((one) => one.fact),
    ...(photos ?? []).filter((sha256) => !known.has(sha256)),
  ]
  return differing.length > 0 ? refused({ code: 'covers-differ', facts: differing }) : done(signer)
}

/** The person whose key made the proof. */
async function keyedBy(desk: Desk, signed: FactOf<'signed'>): Promise<Result<PersonId, Refusal>> {
  const { method } = signed.body
  const proof = 'proof' in method ? method.proof : undefined
  const stream = StreamId.safeParse(`device:${signed.device.id}`)
  const holder = method.kind === 'in person' ? method.witness : signed.observedBy
  if (!proof || !stream.success) return refused({ code: 'key-unknown' })
  const facts = (await desk.factsOf(stream.data)) ?? []
  const key = ofKind(facts, 'signing-key-taken').find((one) => one.id === proof.key && one.observedBy === holder)
  if (!key) return refused({ code: 'key-unknown' })
  const ended = ofKind(facts, 'signing-key-ended').find((one) => one.body.key === key.id)
  if (ended) return refused({ code: 'key-ended', endedAt: ended.observedAt })
  return isDeviceSigned(signed, key) ? done(holder) : refused({ code: 'key-proof-wrong' })
}
