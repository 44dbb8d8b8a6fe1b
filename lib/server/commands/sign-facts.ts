import * as z from 'zod'
import { AtPoint } from '@/lib/domain/facts/at-point'
import { FactId, StreamId, streamKind } from '@/lib/domain/facts/fact'
import { refused } from '@/lib/domain/result'
import { MEANINGS, ROLES } from '@/lib/domain/roles'
import { command } from './command'
import { DecisionEntry, Entry } from './entry'
import { identifySigner, Signer } from './identify-signer'
import { makeSignature } from './make-signature'
import { placeOf } from './place-of'

const SignFacts = z.strictObject({
  stream: StreamId.refine((id) => streamKind(id) === 'repair', 'a repair'),
  ...AtPoint,
  meaning: z.enum(MEANINGS).exclude(['released']),
  role: z.enum(ROLES),
  covers: z.array(FactId).min(1).max(600),
  signer: Signer,
  heads: Entry.heads,
  ...DecisionEntry,
})

/**
 * Sign facts of a repair with a stated meaning: `{ stream, point, attempt, meaning, role, covers, signer, heads? }`. The signature covers the SHA-256 of
 * the exact bytes of each fact; a release is signed in `releasePoint`. Refuses `invalid`, `not-found` (repair or a covered fact), `password-wrong`,
 * `too-many-tries`, `signer-unknown`, `signer-has-account`, `witness-is-signer`, `not-own-role`, `meaning-not-for-role`, `heads-moved`.
 */
export const signFacts = command(SignFacts, async (desk, form) => {
  const kept = await desk.streamOf(form.stream)
  const place = kept && (await placeOf(desk, form.stream, kept.facts))
  if (!kept || !place) return refused({ code: 'not-found' })
  if (desk.actor.rolesOn(place.project, desk.today(place.offset)).length === 0)
    return refused({ code: 'not-allowed', act: 'sign', needs: [form.role] })
  const covers = [...new Set(form.covers)].flatMap((fact) => {
    const sha256 = kept.sha256Of.get(fact)
    return sha256 ? [{ fact, sha256 }] : []
  })
  if (covers.length !== new Set(form.covers).size) return refused({ code: 'not-found' })
  const signing = await identifySigner(desk, form.signer)
  if (!signing.ok) return signing
  const { stream, point, attempt, meaning, role } = form
  const signed = makeSignature(desk, signing.value, {
    stream,
    point,
    attempt,
    meaning,
    role,
    covers,
    ...place,
    id: form.id,
    device: form.device,
  })
  return signed.ok ? desk.append([signed.value], form.heads ?? []) : signed
})
