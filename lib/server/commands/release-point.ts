import * as z from 'zod'
import { StreamId, streamKind } from '@/lib/domain/facts/fact'
import { REPAIR_BODIES } from '@/lib/domain/facts/repair-bodies'
import { mayRelease } from '@/lib/domain/fold/may-release'
import { refused } from '@/lib/domain/result'
import { roleOfParty } from '@/lib/domain/signing/signing-roles'
import { digestOfFact } from '@/lib/evidence/bytes-of-fact'
import { authorise, releaseActOf } from './authorise'
import { command } from './command'
import { decidingActor, decisionGround, namesOwnHead } from './decision-ground'
import { DecisionEntry } from './entry'
import { identifySigner, Signer } from './identify-signer'
import { keptBefore } from './kept-before'
import { factsOfAttempt, makeSignature } from './make-signature'
import { barrierOf } from './refusal-of'

const ReleasePoint = z.strictObject({
  stream: StreamId.refine((id) => streamKind(id) === 'repair', 'a repair'),
  body: REPAIR_BODIES.released,
  signer: Signer,
  ...DecisionEntry,
})

/**
 * Release a hold for a party, now, with the releaser's signature over the release and every record and photo of the attempt, all or nothing:
 * `{ stream, body: { point, attempt, party, scope, heads, remark? }, signer }`. The releaser is the signer, whoever's tablet it is, and must hold the party's role.
 * Refuses `invalid`, `not-found`, `not-allowed`, `not-decided` (see `mayRelease`), `heads-moved`, and as `identifySigner`.
 */
export const releasePoint = command(ReleasePoint, async (desk, form) => {
  const { stream, body } = form
  const ground = await decisionGround(desk, stream, 'read record')
  if (!ground.ok) return ground
  const { kept, place, state } = ground.value
  const signing = await identifySigner(desk, form.signer)
  if (!signing.ok) return signing
  const { signer } = signing.value
  const barred = authorise(signer, place.project, desk.today(place.offset), releaseActOf(body.party))
  if (barred) return refused(barred)
  const release = desk.make({ stream, kind: 'released', body, by: signer.person, entry: form, offset: place.offset })
  const again = keptBefore(release, kept.facts)
  if (again) return again
  const { point, attempt, party, scope } = body
  const allowed = mayRelease({
    state,
    point,
    attempt,
    party,
    scope,
    actor: decidingActor(desk, place, signer),
    now: desk.now(place.offset),
  })
  const barrier = namesOwnHead(body.heads, stream) ?? barrierOf(releaseActOf(party), allowed)
  if (barrier) return refused(barrier)
  const covers = [
    { fact: release.id, sha256: digestOfFact(release) },
    ...factsOfAttempt(kept.facts, kept.sha256Of, point, attempt),
  ]
  const signed = makeSignature(desk, signing.value, {
    stream,
    point,
    attempt,
    meaning: 'released',
    role: roleOfParty(party),
    covers,
    ...place,
    device: form.device,
  })
  return signed.ok ? desk.append([release, signed.value], body.heads) : signed
})
