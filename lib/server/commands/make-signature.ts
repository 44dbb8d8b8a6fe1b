import type { FactId, Sha256, StreamId } from '@/lib/domain/facts/fact'
import type { Fact, FactOf } from '@/lib/domain/facts/fact-kinds'
import { done, type Result, refused } from '@/lib/domain/result'
import type { Meaning, Role } from '@/lib/domain/roles'
import { maySign, partyOfRole } from '@/lib/domain/signing/signing-roles'
import type { PointNo } from '@/lib/domain/specification'
import type { Desk } from './desk'
import type { Entry } from './entry'
import type { Signing } from './identify-signer'
import type { Refusal } from './refusal'

export type SignatureDraft = {
  stream: StreamId
  point: PointNo
  attempt: number
  meaning: Meaning
  role: Role
  covers: readonly { fact: FactId; sha256: Sha256 }[]
  project: StreamId | 'any'
  offset: string | null
  device?: Entry['device']
  id?: FactId | undefined
}

/**
 * Make the fact of a signature over exact bytes. The role must be the signer's on the day, and the meaning one that the role may sign; signing in
 * person is the client's alone. Refuses `not-own-role`, `meaning-not-for-role`.
 */
export function makeSignature(
  desk: Desk,
  { signer, method }: Signing,
  draft: SignatureDraft,
): Result<FactOf<'signed'>, Refusal> {
  const day = desk.today(draft.offset)
  if (!signer.rolesOn(draft.project, day).includes(draft.role)) return refused({ code: 'not-own-role' })
  if (method.kind === 'in person' && draft.role !== 'client') return refused({ code: 'not-own-role' })
  if (!maySign(draft.role, draft.meaning, signer.approvesOn(draft.project, day, draft.role)))
    return refused({ code: 'meaning-not-for-role', meaning: draft.meaning, role: draft.role })
  const { stream, point, attempt, meaning, role, offset, id, device } = draft
  const body = {
    meaning,
    point,
    attempt,
    role,
    name: signer.name,
    party: partyOfRole(role),
    covers: [...draft.covers],
    method,
  }
  return done(desk.make({ stream, kind: 'signed', body, by: signer.person, offset, entry: { id, device } }))
}

/** Facts of one attempt that a signature of its release or its closing covers: records, corrections of them and photos, with their digests. */
export function factsOfAttempt(
  facts: readonly Fact[],
  digests: ReadonlyMap<FactId, Sha256>,
  point: PointNo,
  attempt: number,
): { fact: FactId; sha256: Sha256 }[] {
  const records = new Set(
    facts
      .filter((one) => one.kind === 'recorded' && one.body.point === point && one.body.attempt === attempt)
      .map((one) => one.id),
  )
  return facts.flatMap((one) => {
    const isOfAttempt =
      records.has(one.id) ||
      (one.kind === 'corrected' && records.has(one.body.target)) ||
      (one.kind === 'photo-attached' && one.body.point === point && one.body.attempt === attempt)
    const sha256 = digests.get(one.id)
    return isOfAttempt && sha256 ? [{ fact: one.id, sha256 }] : []
  })
}
