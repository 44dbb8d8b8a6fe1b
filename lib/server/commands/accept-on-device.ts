import * as z from 'zod'
import { FactId, PersonId, StreamId, streamKind } from '@/lib/domain/facts/fact'
import type { FactOf } from '@/lib/domain/facts/fact-kinds'
import { REPAIR_BODIES } from '@/lib/domain/facts/repair-bodies'
import { refused } from '@/lib/domain/result'
import { dayOf } from '@/lib/domain/time'
import { digestOfFact } from '@/lib/evidence/bytes-of-fact'
import { loadRepairState } from '@/lib/server/store/load-repair-state'
import { acceptingPoint } from './accepting'
import { authorise } from './authorise'
import { command } from './command'
import { namesOwnHead } from './decision-ground'
import { misdated } from './device-decision'
import { deviceSigner } from './device-signer'
import { keptBefore } from './kept-before'
import { placeOf } from './place-of'
import type { Refusal } from './refusal'
import { DeviceSigning } from './sign-on-device'

const AcceptOnDevice = z.strictObject({
  stream: StreamId.refine((id) => streamKind(id) === 'repair', 'a repair'),
  body: REPAIR_BODIES.accepted,
  signature: z.strictObject({ id: FactId, body: REPAIR_BODIES.signed }),
  signer: PersonId,
  id: FactId,
  ...DeviceSigning,
})

/**
 * Keep an acceptance that was given on a device with the inspector's key, at the time it was given: `{ stream, body, signature: { id, body }, signer, id, observedAt, enteredAt, device }`. It is judged as the
 * record stood at that time. An acceptance closes the record, so one that did not know all of it is not kept: it stays on the device until who gave it decides anew.
 * Refuses `invalid`, `not-found`, `not-allowed`, `not-decided` (see `acceptingPoint`), `decision-misdated`, `heads-moved`, and as `deviceSigner`.
 */
export const acceptOnDevice = command(AcceptOnDevice, async (desk, form) => {
  const { stream, body, signer: by, signature } = form
  const kept = await desk.streamOf(stream)
  const place = kept && (await placeOf(desk, stream, kept.facts))
  if (!kept || !place) return refused({ code: 'not-found' })
  const barred = authorise(desk.actor, place.project, desk.today(place.offset), 'read record')
  if (barred) return refused(barred)
  const at = { stream, by, offset: place.offset }
  const accepted = desk.make({ ...at, kind: 'accepted', body, entry: form })
  const again = keptBefore(accepted, kept.facts)
  if (again) return again
  const signed = desk.make({ ...at, kind: 'signed', body: signature.body, entry: { ...form, id: signature.id } })
  const unfit =
    misdated(desk, accepted, kept.facts) ?? namesOwnHead(body.heads, stream) ?? unfitSignature(accepted, signed)
  if (unfit) return refused(unfit)
  const seen = body.heads.find((head) => head.stream === stream)?.length ?? 0
  const now = kept.facts.length
  // longer than the record: entries of the device itself were refused, which is nothing that it did not know of
  if (seen < now) return refused({ code: 'heads-moved', moved: [{ stream, seen, now }] })
  const fresh = new Map([[accepted.id, digestOfFact(accepted)]])
  const signer = await deviceSigner(desk, signed, { kept, place, drawing: undefined }, fresh)
  if (!signer.ok) return signer
  const day = dayOf(accepted.observedAt)
  const lacking = authorise(signer.value, place.project, day, 'accept repair')
  if (lacking) return refused(lacking)
  const state = await loadRepairState(desk.store, desk.actor.tenant, stream, accepted.observedAt)
  if (!state) return refused({ code: 'not-found' })
  const { person } = signer.value
  const roles = signer.value.rolesOn(place.project, day)
  const approve = signer.value.approvesOn(place.project, day, 'inspector')
  const point = acceptingPoint(state, accepted, { person, roles, approve })
  if (!point.ok) return point
  const { no, current } = point.value
  return signed.body.point === no && signed.body.attempt === current.attempt
    ? desk.append([accepted, signed], [{ stream, length: now }])
    : refused(NOT_ITS_OWN)
})

const NOT_ITS_OWN: Refusal = { code: 'invalid', fields: { signature: ['is not a signature of this acceptance'] } }

/** The signature must be the acceptance's own: an inspector's, of that meaning, and the acceptance among what it covers. */
function unfitSignature(accepted: FactOf<'accepted'>, signed: FactOf<'signed'>): Refusal | null {
  const { meaning, role, covers } = signed.body
  const fits = meaning === 'accepted' && role === 'inspector' && covers.some((one) => one.fact === accepted.id)
  return fits ? null : NOT_ITS_OWN
}
