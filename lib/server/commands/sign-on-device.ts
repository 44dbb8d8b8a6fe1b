import * as z from 'zod'
import { FactId, PersonId, StreamId, streamKind } from '@/lib/domain/facts/fact'
import { REPAIR_BODIES } from '@/lib/domain/facts/repair-bodies'
import { refused } from '@/lib/domain/result'
import { DrawnSignature } from '@/lib/domain/signing/drawn-signature'
import { authorise } from './authorise'
import { command } from './command'
import { misdated } from './device-decision'
import { deviceSigner } from './device-signer'
import { Entry } from './entry'
import { keptBefore } from './kept-before'
import { placeOf } from './place-of'

const { id: _id, late: _late, heads: _heads, ...stated } = Entry

/** When and on which device a signature was made: all of it is under the device's key and must be stated. */
export const DeviceSigning = {
  observedAt: stated.observedAt.unwrap(),
  enteredAt: stated.enteredAt.unwrap(),
  device: stated.device.unwrap(),
} as const

const SignOnDevice = z.strictObject({
  stream: StreamId.refine((id) => streamKind(id) === 'repair', 'a repair'),
  body: REPAIR_BODIES.signed.refine((body) => body.meaning !== 'released', 'a release is signed with the release'),
  signer: PersonId,
  /** The drawn signature of who signs in person. */
  drawing: DrawnSignature.optional(),
  id: FactId,
  ...DeviceSigning,
})

/**
 * Keep a signature that was made on a device with its key, at the time of signing: `{ stream, body, signer, id, observedAt, enteredAt, device }`. The one who sends it must be of the project; the proof
 * says who signed. Refuses `invalid`, `not-found`, `not-allowed`, `decision-misdated`, and as `deviceSigner`.
 */
export const signOnDevice = command(SignOnDevice, async (desk, form) => {
  const { stream, body } = form
  const kept = await desk.streamOf(stream)
  const place = kept && (await placeOf(desk, stream, kept.facts))
  if (!kept || !place) return refused({ code: 'not-found' })
  const barred = authorise(desk.actor, place.project, desk.today(place.offset), 'read record')
  if (barred) return refused(barred)
  const signed = desk.make({ stream, kind: 'signed', body, by: form.signer, entry: form, offset: place.offset })
  const again = keptBefore(signed, kept.facts)
  if (again) return again
  const wrongTime = misdated(desk, signed, kept.facts)
  if (wrongTime) return refused(wrongTime)
  const signer = await deviceSigner(desk, signed, { kept, place, drawing: form.drawing })
  return signer.ok ? desk.append([signed], []) : signer
})
