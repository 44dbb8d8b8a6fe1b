import { hashPassword } from 'better-auth/crypto'
import * as z from 'zod'
import { done, type Result, refused } from '@/lib/domain/result'
import { loadRuntime } from '@/lib/server/runtime/runtime'
import { PASSWORD_LENGTH } from './auth'
import { CODE_TRIES, countTry } from './count-try'
import { insertAccount } from './create-account'
import { takeInvitation } from './invitations'

const AcceptInvitation = z.strictObject({
  token: z.string().min(1).max(64),
  password: z.string().min(PASSWORD_LENGTH.min, `at least ${PASSWORD_LENGTH.min} characters`).max(PASSWORD_LENGTH.max),
})

export type InvitationRefusal =
  | { code: 'invalid'; fields: Record<string, string[]> }
  | { code: 'invitation-over' }
  | { code: 'email-taken' }
  | { code: 'person-has-account' }
  | { code: 'too-many-tries'; retryAfterSeconds: number }

/**
 * Take up an invitation once and set its password. A refusal leaves the invitation as it was.
 * Refuses `invalid`, `invitation-over` (unknown, taken up or out of time), `email-taken`, `person-has-account`, `too-many-tries`.
 */
export async function acceptInvitation(input: unknown): Promise<Result<{ email: string }, InvitationRefusal>> {
  const form = AcceptInvitation.safeParse(input)
  if (!form.success) return refused({ code: 'invalid', fields: z.flattenError(form.error).fieldErrors })
  const { store } = await loadRuntime()
  const counted = await countTry(store.db.queries, `invitation:${form.data.token}`, CODE_TRIES)
  if (!counted.ok) return counted
  const passwordHash = await hashPassword(form.data.password)
  try {
    return await store.db.queries.transaction(async (tx) => {
      const invited = await takeInvitation(tx, form.data.token)
      if (!invited) return refused({ code: 'invitation-over' })
      const account = await insertAccount(tx, {
        name: invited.name,
        email: invited.email,
        personId: invited.person,
        tenant: invited.tenant,
        passwordHash,
      })
      if (!account.ok) throw new TakenBack(account.error)
      return done({ email: invited.email })
    })
  } catch (error) {
    if (error instanceof TakenBack) return refused(error.refusal)
    throw error
  }
}

/** Rolls the taking of an invitation back when its account cannot be made. */
class TakenBack extends Error {
  constructor(readonly refusal: Exclude<InvitationRefusal, { code: 'invitation-over' }>) {
    super(refusal.code)
  }
}
