import { randomUUID } from 'node:crypto'
import { hashPassword } from 'better-auth/crypto'
import { eq } from 'drizzle-orm'
import * as z from 'zod'
import { account, member, organization, user } from '@/db/auth-schema'
import type { Queries } from '@/db/client'
import { accountPersons, tenants } from '@/db/schema'
import { PersonId } from '@/lib/domain/facts/fact'
import { done, type Result, refused } from '@/lib/domain/result'
import { PASSWORD_LENGTH } from './auth'

const PERSON_ID = /^[A-Za-z0-9][A-Za-z0-9._-]{0,60}$/

/** What an account needs. The e-mail address only names the account: nothing is ever sent to it. */
export const NewAccount = z.strictObject({
  name: z.string().trim().min(1, 'the name is missing').max(120),
  email: z
    .email('an address such as name@example.org')
    .max(254)
    .transform((text) => text.toLowerCase()),
  password: z.string().min(PASSWORD_LENGTH.min, `at least ${PASSWORD_LENGTH.min} characters`).max(PASSWORD_LENGTH.max),
  tenant: z.string().min(1),
  personId: z
    .string()
    .regex(PERSON_ID, 'letters, digits, dots and hyphens, starting with a letter or digit')
    .pipe(PersonId),
})
export type NewAccount = z.input<typeof NewAccount>

export type AccountRefusal =
  | { code: 'invalid'; fields: Record<string, string[]> }
  | { code: 'email-taken' }
  | { code: 'person-has-account' }

type Writer = Pick<Queries, 'select' | 'insert'>

/**
 * Make an account for a person of a tenant: user, password hash, membership and the tie to the person, all or none.
 * Refuses `invalid`, `email-taken`, `person-has-account`. @throws when the tenant does not exist
 */
export async function createAccount(
  db: Queries,
  input: NewAccount,
): Promise<Result<{ userId: string }, AccountRefusal>> {
  const parsed = NewAccount.safeParse(input)
  if (!parsed.success) return refused({ code: 'invalid', fields: z.flattenError(parsed.error).fieldErrors })
  const passwordHash = await hashPassword(parsed.data.password)
  return db.transaction((tx) => insertAccount(tx, { ...parsed.data, passwordHash }))
}

/** The rows of an account, inside the caller's transaction; the password comes hashed. Refuses as `createAccount`. */
export async function insertAccount(
  tx: Writer,
  made: { name: string; email: string; tenant: string; personId: PersonId; passwordHash: string },
): Promise<Result<{ userId: string }, AccountRefusal>> {
  const [holder] = await tx.select().from(tenants).where(eq(tenants.id, made.tenant))
  if (!holder) throw new Error('An account was asked for a tenant that does not exist')
  const now = new Date()
  const userId = randomUUID()
  await tx
    .insert(organization)
    .values({ id: holder.id, name: holder.name, slug: holder.slug, createdAt: now })
    .onConflictDoNothing()
  const [taken] = await tx.select({ id: user.id }).from(user).where(eq(user.email, made.email))
  if (taken) return refused({ code: 'email-taken' })
  const persons = await tx
    .insert(accountPersons)
    .values({ userId, tenant: made.tenant, personId: made.personId })
    .onConflictDoNothing()
    .returning({ userId: accountPersons.userId })
  if (persons.length === 0) return refused({ code: 'person-has-account' })
  await tx.insert(user).values({ id: userId, name: made.name, email: made.email, createdAt: now, updatedAt: now })
  await tx.insert(account).values({
    id: randomUUID(),
    accountId: userId,
    providerId: 'credential',
    userId,
    password: made.passwordHash,
    createdAt: now,
    updatedAt: now,
  })
  await tx
    .insert(member)
    .values({ id: randomUUID(), organizationId: made.tenant, userId, role: 'member', createdAt: now })
  return done({ userId })
}
