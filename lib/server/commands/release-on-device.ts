import * as z from 'zod'
import { FactId, PersonId, StreamId, streamKind } from '@/lib/domain/facts/fact'
import type { FactOf } from '@/lib/domain/facts/fact-kinds'
import { REPAIR_BODIES } from '@/lib/domain/facts/repair-bodies'
import { mayRelease } from '@/lib/domain/fold/may-release'
import { refused } from '@/lib/domain/result'
import { DrawnSignature } from '@/lib/domain/signing/drawn-signature'
import { roleOfParty } from '@/lib/domain/signing/signing-roles'
import { dayOf } from '@/lib/domain/time'
import { digestOfFact } from '@/lib/evidence/bytes-of-fact'
import type { Actor } from '@/lib/server/auth/actor'
import { loadRepairState } from '@/lib/server/store/load-repair-state'
import { authorise, releaseActOf } from './authorise'
import { command } from './command'
import { conflictNote } from './conflict-note'
import { namesOwnHead } from './decision-ground'
import type { Desk, KeptStream } from './desk'
import { misdated } from './device-decision'
import { deviceSigner } from './device-signer'
import { keptBefore } from './kept-before'
import { type Place, placeOf } from './place-of'
import type { Refusal } from './refusal'
import { barrierOf } from './refusal-of'
import { DeviceSigning } from './sign-on-device'

const ReleaseOnDevice = z.strictObject({
  stream: StreamId.refine((id) => streamKind(id) === 'repair', 'a repair'),
  body: REPAIR_BODIES.released,
  signature: z.strictObject({ id: FactId, body: REPAIR_BODIES.signed }),
  signer: PersonId,
  /** The drawn signature of who signs in person. */
  drawing: DrawnSignature.optional(),
  id: FactId,
  ...DeviceSigning,
})

/** What no conflict excuses: it was so whatever else the record held. */
const NEVER: ReadonlySet<string> = new Set([
  'not-allowed',
  'not-a-hold',
  'own-work',
  'point-unknown',
  'attempt-unknown',
])

/**
 * Keep a release that was given on a device with its key, at the time it was given: `{ stream, body, signature: { id, body }, signer, id, observedAt, enteredAt, device }`. It is judged as the record
 * stood at that time. When the record had moved on beyond what the device saw, the release is kept all the same, in question, with a note of what it did not know: a person rules on it.
 * Refuses `invalid`, `not-found`, `not-allowed`, `not-decided` (see `mayRelease`), `decision-misdated`, and as `deviceSigner`.
 */
export const releaseOnDevice = command(ReleaseOnDevice, async (desk, form) => {
  const { stream, body, signer: by, signature } = form
  const kept = await desk.streamOf(stream)
  const place = kept && (await placeOf(desk, stream, kept.facts))
  if (!kept || !place) return refused({ code: 'not-found' })
  const barred = authorise(desk.actor, place.project, desk.today(place.offset), 'read record')
  if (barred) return refused(barred)
  const at = { stream, by, offset: place.offset }
  const release = desk.make({ ...at, kind: 'released', body, entry: form })
  const again = keptBefore(release, kept.facts)
  if (again) return again
  const signed = desk.make({ ...at, kind: 'signed', body: signature.body, entry: { ...form, id: signature.id } })
  const unfit =
    misdated(desk, release, kept.facts) ?? namesOwnHead(body.heads, stream) ?? unfitSignature(release, signed)
  if (unfit) return refused(unfit)
  const fresh = new Map([[release.id, digestOfFact(release)]])
  const signer = await deviceSigner(desk, signed, { kept, place, drawing: form.drawing }, fresh)
  if (!signer.ok) return signer
  const barrier = await barrierAt(desk, release, { place, signer: signer.value })
  // shorter than seen: entries of the device itself were refused, which is nothing that it did not know of
  const isMoved = body.heads.some((head) => head.stream === stream && head.length < kept.facts.length)
  if (barrier && (!isMoved || barrier.isFinal)) return refused(barrier.refusal)
  if (!isMoved) return desk.append([release, signed], [{ stream, length: kept.facts.length }])
  const note = noteOf(desk, release, kept)
  // what came while this was decided is noted by its number only: the release is in question either way
  return desk.append([release, signed, note], [])
})

/** The signature must be the release's own: its meaning, point, attempt and party, and the release among what it covers. */
function unfitSignature(release: FactOf<'released'>, signed: FactOf<'signed'>): Refusal | null {
  const { meaning, point, attempt, role, covers } = signed.body
  const fits =
    meaning === 'released' &&
    point === release.body.point &&
    attempt === release.body.attempt &&
    role === roleOfParty(release.body.party) &&
    covers.some((one) => one.fact === release.id)
  return fits ? null : { code: 'invalid', fields: { signature: ['is not a signature of this release'] } }
}

/** Why the release could not be given, as the record stood when it was given. */
async function barrierAt(
  desk: Desk,
  release: FactOf<'released'>,
  { place, signer }: { place: Place; signer: Actor },
): Promise<{ refusal: Refusal; isFinal: boolean } | null> {
  const { point, attempt, party, scope } = release.body
  const act = releaseActOf(party)
  const day = dayOf(release.observedAt)
  const barred = authorise(signer, place.project, day, act)
  if (barred) return { refusal: barred, isFinal: true }
  const state = await loadRepairState(desk.store, desk.actor.tenant, release.stream, release.observedAt)
  if (!state) return { refusal: { code: 'not-found' }, isFinal: true }
  const actor = {
    person: signer.person,
    roles: signer.rolesOn(place.project, day),
    approve: signer.approvesOn(place.project, day, 'inspector'),
  }
  const allowed = mayRelease({ state, point, attempt, party, scope, actor, now: release.observedAt })
  const refusal = barrierOf(act, allowed)
  return refusal && !allowed.ok ? { refusal, isFinal: NEVER.has(allowed.error.code) } : null
}

function noteOf(desk: Desk, release: FactOf<'released'>, kept: KeptStream): FactOf<'conflict-noted'> {
  const { point, attempt, party, heads } = release.body
  const seen = heads.find((head) => head.stream === release.stream)?.length ?? 0
  const unseen = kept.facts.length - seen
  return conflictNote(desk, {
    decision: release.id,
    isKept: true,
    repair: release.stream,
    device: release.device,
    facts: kept.facts,
    seen,
    point,
    words: `Release of point ${point}, attempt ${attempt}, for ${party}, given without a network: ${unseen === 1 ? '1 fact was' : `${unseen} facts were`} in the record that the device had not seen.`,
  })
}
