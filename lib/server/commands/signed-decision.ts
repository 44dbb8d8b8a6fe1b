import * as z from 'zod'
import { FactId, PersonId, StreamId, streamKind } from '@/lib/domain/facts/fact'
import type { BodyOf, FactOf } from '@/lib/domain/facts/fact-kinds'
import { REPAIR_BODIES } from '@/lib/domain/facts/repair-bodies'
import { type Result, refused } from '@/lib/domain/result'
import { DrawnSignature } from '@/lib/domain/signing/drawn-signature'
import { digestOfFact } from '@/lib/evidence/bytes-of-fact'
import type { Actor } from '@/lib/server/auth/actor'
import { authorise } from './authorise'
import { type Command, command } from './command'
import { namesOwnHead } from './decision-ground'
import type { Desk, Kept, KeptStream } from './desk'
import { misdated } from './device-decision'
import { deviceSigner } from './device-signer'
import { keptBefore } from './kept-before'
import { type Place, placeOf } from './place-of'
import type { Refusal } from './refusal'
import { DeviceSigning } from './sign-on-device'

type Decision = 'released' | 'accepted'
/** A decision of a device as it came, with its signature, who signed it, and the record that it came to: `seen` of its `now` facts were known to the device. */
export type SignedDecision<K extends Decision> = {
  decision: FactOf<K>
  signed: FactOf<'signed'>
  signer: Actor
  kept: KeptStream
  place: Place
  seen: number
  now: number
}

/** The decision in words, as a refusal names it. */
const WORDS: Readonly<Record<Decision, string>> = { released: 'release', accepted: 'acceptance' }

/**
 * A command that takes in a decision made on a device with its key, at the time it was made: `{ stream, body, signature: { id, body }, signer, id, observedAt, enteredAt, device }`. Sent again it is answered as it was
 * kept. Refuses `invalid`, `not-found`, `not-allowed`, `decision-misdated`, as `deviceSigner`, and as `work`, which decides and appends.
 * @param fits whether the signature is the decision's own; that it covers the decision is seen here
 */
export function signedDecision<K extends Decision>(
  kind: K,
  fits: (decision: BodyOf<K>, signed: BodyOf<'signed'>) => boolean,
  work: (desk: Desk, one: SignedDecision<K>) => Promise<Result<Kept, Refusal>>,
): Command {
  const form = z.strictObject({
    stream: StreamId.refine((id) => streamKind(id) === 'repair', 'a repair'),
    body: REPAIR_BODIES[kind] as z.ZodType<BodyOf<Decision>>,
    signature: z.strictObject({ id: FactId, body: REPAIR_BODIES.signed }),
    signer: PersonId,
    /** The drawn signature of who signs in person. */
    drawing: DrawnSignature.optional(),
    id: FactId,
    ...DeviceSigning,
  })
  return command(form, async (desk, said) => {
    const { stream, body, signer: by, signature, drawing } = said
    const kept = await desk.streamOf(stream)
    const place = kept && (await placeOf(desk, stream, kept.facts))
    if (!kept || !place) return refused({ code: 'not-found' })
    const barred = authorise(desk.actor, place.project, desk.today(place.offset), 'read record')
    if (barred) return refused(barred)
    const at = { stream, by, offset: place.offset }
    const decision = desk.make<Decision>({ ...at, kind, body, entry: said })
    const again = keptBefore(decision, kept.facts)
    if (again) return again
    const signed = desk.make({ ...at, kind: 'signed', body: signature.body, entry: { ...said, id: signature.id } })
    const isCovered = signed.body.covers.some((one) => one.fact === decision.id)
    const unfit =
      misdated(desk, decision, kept.facts) ??
      namesOwnHead(body.heads, stream) ??
      (isCovered && fits(body as BodyOf<K>, signed.body) ? null : notItsOwn(kind))
    if (unfit) return refused(unfit)
    const fresh = new Map([[decision.id, digestOfFact(decision)]])
    const signer = await deviceSigner(desk, signed, { kept, place, drawing }, fresh)
    if (!signer.ok) return signer
    const seen = body.heads.find((head) => head.stream === stream)?.length ?? 0
    const made = decision as FactOf<K>
    return work(desk, { decision: made, signed, signer: signer.value, kept, place, seen, now: kept.facts.length })
  })
}

/** The refusal of a decision whose signature is another's. */
export function notItsOwn(kind: Decision): Refusal {
  return { code: 'invalid', fields: { signature: [`is not a signature of this ${WORDS[kind]}`] } }
}
