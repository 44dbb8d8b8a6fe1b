import * as z from 'zod'
import { PersonId } from '@/lib/domain/facts/fact'
import type { BodyOf } from '@/lib/domain/facts/fact-kinds'
import { done, type Result, refused } from '@/lib/domain/result'
import { DrawnSignature } from '@/lib/domain/signing/drawn-signature'
import type { Actor } from '@/lib/server/auth/actor'
import { loadActorOfPerson } from '@/lib/server/auth/load-actor'
import { verifyPassword } from '@/lib/server/auth/verify-password'
import type { Desk } from './desk'
import { keepDrawing } from './keep-drawing'
import type { Refusal } from './refusal'

const Password = z.string().min(1).max(128)

/**
 * Who signs, chosen at each signature: never the tablet's last user. With an account, the person's own password; a client without one signs in
 * person by drawing the signature, and the tablet's holder witnesses it with his own password.
 */
export const Signer = z.discriminatedUnion('by', [
  z.strictObject({ by: z.literal('password'), person: PersonId, password: Password }),
  z.strictObject({
    by: z.literal('in person'),
    person: PersonId,
    witnessPassword: Password,
    drawing: DrawnSignature,
  }),
])
export type Signer = z.infer<typeof Signer>

export type Signing = { signer: Actor; method: BodyOf<'signed'>['method'] }

/**
 * Make sure who signs. Refuses `password-wrong`, `too-many-tries`, and for signing in person `signer-unknown`, `signer-has-account`, `witness-is-signer`.
 */
export async function identifySigner(desk: Desk, form: Signer): Promise<Result<Signing, Refusal>> {
  const { store, actor } = desk
  if (form.by === 'password') {
    const verified = await verifyPassword(store.db.queries, actor.tenant, form.person, form.password)
    if (!verified.ok) return verified
    const signer = await loadActorOfPerson(store, actor.tenant, form.person)
    return signer ? done({ signer, method: { kind: 'password' } }) : refused({ code: 'signer-unknown' })
  }
  if (form.person === actor.person) return refused({ code: 'witness-is-signer' })
  const witnessed = await verifyPassword(store.db.queries, actor.tenant, actor.person, form.witnessPassword)
  if (!witnessed.ok) return witnessed
  const signer = await loadActorOfPerson(store, actor.tenant, form.person)
  if (!signer) return refused({ code: 'signer-unknown' })
  if (signer.userId !== '') return refused({ code: 'signer-has-account' })
  const drawing = await keepDrawing(desk, form.drawing)
  return done({ signer, method: { kind: 'in person', witness: actor.person, drawing } })
}
