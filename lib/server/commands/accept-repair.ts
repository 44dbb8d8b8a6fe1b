import * as z from 'zod'
import { StreamId, streamKind } from '@/lib/domain/facts/fact'
import { REPAIR_BODIES } from '@/lib/domain/facts/repair-bodies'
import { refused } from '@/lib/domain/result'
import { digestOfFact } from '@/lib/evidence/bytes-of-fact'
import { acceptingPoint } from './accepting'
import { authorise } from './authorise'
import { command } from './command'
import { decidingActor, decisionGround } from './decision-ground'
import { DecisionEntry } from './entry'
import { identifySigner, Signer } from './identify-signer'
import { keptBefore } from './kept-before'
import { factsOfAttempt, makeSignature } from './make-signature'

const AcceptRepair = z.strictObject({
  stream: StreamId.refine((id) => streamKind(id) === 'repair', 'a repair'),
  body: REPAIR_BODIES.accepted,
  signer: Signer,
  ...DecisionEntry,
})

/**
 * Accept a repair, now, signed *accepted* by the inspector over the acceptance and the closing records: `{ stream, body, signer }`. Client and engineer sign the
 * same fact with `signFacts`. Refuses `invalid`, `not-found`, `not-allowed`, `not-decided` (see `mayAccept`; `plan-has-no-acceptance`, `conditions-do-not-fit`), `heads-moved`, and as `identifySigner`.
 */
export const acceptRepair = command(AcceptRepair, async (desk, form) => {
  const { stream, body } = form
  const ground = await decisionGround(desk, stream, 'read record')
  if (!ground.ok) return ground
  const { kept, place, state } = ground.value
  const signing = await identifySigner(desk, form.signer)
  if (!signing.ok) return signing
  const { signer } = signing.value
  const barred = authorise(signer, place.project, desk.today(place.offset), 'accept repair')
  if (barred) return refused(barred)
  const accepted = desk.make({ stream, kind: 'accepted', body, by: signer.person, entry: form, offset: place.offset })
  const again = keptBefore(accepted, kept.facts)
  if (again) return again
  const point = acceptingPoint(state, accepted, decidingActor(desk, place, signer))
  if (!point.ok) return point
  const { no, current } = point.value
  const covers = [
    { fact: accepted.id, sha256: digestOfFact(accepted) },
    ...factsOfAttempt(kept.facts, kept.sha256Of, no, current.attempt),
  ]
  const signed = makeSignature(desk, signing.value, {
    stream,
    point: no,
    attempt: current.attempt,
    meaning: 'accepted',
    role: 'inspector',
    covers,
    ...place,
    device: form.device,
  })
  return signed.ok ? desk.append([accepted, signed.value], body.heads) : signed
})
