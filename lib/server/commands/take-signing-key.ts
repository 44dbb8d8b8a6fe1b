import * as z from 'zod'
import { FactId, StreamId, streamKind } from '@/lib/domain/facts/fact'
import { DEVICE_BODIES } from '@/lib/domain/facts/project-bodies'
import { refused } from '@/lib/domain/result'
import { authorise } from './authorise'
import { command } from './command'
import { Entry } from './entry'
import { identifySigner, Signer } from './identify-signer'
import { keptBefore } from './kept-before'

const TakeSigningKey = z.strictObject({
  stream: StreamId.refine((id) => streamKind(id) === 'device', 'a device'),
  body: DEVICE_BODIES['signing-key-taken'],
  id: FactId,
  device: Entry.device,
  signer: Signer.options[0],
})

/**
 * Take a device's key for a person, now, before the server and with the person's own password: `{ stream, body: { algorithm, publicKey }, id, signer }`. From then on that key signs for that person on
 * that device. Refuses `invalid`, `not-allowed`, `password-wrong`, `too-many-tries`, `signer-unknown`.
 */
export const takeSigningKey = command(TakeSigningKey, async (desk, form) => {
  const barred = authorise(desk.actor, 'any', desk.today(null), 'keep devices')
  if (barred) return refused(barred)
  const signing = await identifySigner(desk, form.signer)
  if (!signing.ok) return signing
  const { stream, body, id, device } = form
  const fact = desk.make({
    stream,
    kind: 'signing-key-taken',
    body,
    by: signing.value.signer.person,
    entry: { id, device },
    offset: null,
  })
  const again = keptBefore(fact, (await desk.factsOf(stream)) ?? [])
  return again ?? desk.append([fact], [])
})
