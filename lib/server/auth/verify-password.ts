import { hashPassword, verifyPassword as matches } from 'better-auth/crypto'
import { and, eq } from 'drizzle-orm'
import { account } from '@/db/auth-schema'
import type { Queries } from '@/db/client'
import { accountPersons } from '@/db/schema'
import type { PersonId } from '@/lib/domain/facts/fact'
import { done, type Result, refused } from '@/lib/domain/result'
import { countTry, forgetTries, PASSWORD_TRIES } from './count-try'

export type PasswordRefusal = { code: 'password-wrong' } | { code: 'too-many-tries'; retryAfterSeconds: number }

/**
 * Verify the password of a person of a tenant again, as a signature asks. A person without an account answers as slowly as a wrong password and the
 * same way. Refuses `password-wrong`, `too-many-tries`.
 */
export async function verifyPassword(
  db: Queries,
  tenant: string,
  person: PersonId,
  password: string,
): Promise<Result<{ userId: string }, PasswordRefusal>> {
  const key = `signing:${tenant}:${person}`
  const counted = await countTry(db, key, PASSWORD_TRIES)
  if (!counted.ok) return counted
  const [kept] = await db
    .select({ userId: account.userId, hash: account.password })
    .from(accountPersons)
    .innerJoin(account, and(eq(account.userId, accountPersons.userId), eq(account.providerId, 'credential')))
    .where(and(eq(accountPersons.tenant, tenant), eq(accountPersons.personId, person)))
  if (!kept?.hash) {
    await hashPassword(password)
    return refused({ code: 'password-wrong' })
  }
  if (!(await matches({ hash: kept.hash, password }))) return refused({ code: 'password-wrong' })
  await forgetTries(db, key)
  return done({ userId: kept.userId })
}
