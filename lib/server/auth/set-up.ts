import { randomUUID } from 'node:crypto'
import { hashPassword } from 'better-auth/crypto'
import { eq, isNull, sql } from 'drizzle-orm'
import { v7 as makeId } from 'uuid'
import * as z from 'zod'
import { setupCodes, tenants } from '@/db/schema'
import { FactId, type PersonId, streamOf } from '@/lib/domain/facts/fact'
import type { Fact } from '@/lib/domain/facts/fact-kinds'
import { done, type Result, refused } from '@/lib/domain/result'
import { dayOf, instantOf, momentOf } from '@/lib/domain/time'
import { loadRuntime } from '@/lib/server/runtime/runtime'
import { appendFacts } from '@/lib/server/store/append-facts'
import { CODE_TRIES, countTry } from './count-try'
import { insertAccount, NewAccount } from './create-account'
import { matchingCode, needsSetup } from './setup-code'

const SetUp = z.strictObject({
  code: z.string().trim().min(1, 'the code is missing').max(64),
  organisation: z.string().trim().min(2, 'the name is missing').max(120),
  utcOffset: z.string().regex(/^[+-]\d{2}:\d{2}$/, 'an offset such as +01:00'),
  ...NewAccount.pick({ name: true, email: true, password: true, personId: true }).shape,
})

export type SetUpRefusal =
  | { code: 'invalid'; fields: Record<string, string[]> }
  | { code: 'set-up-already' }
  | { code: 'code-wrong' }
  | { code: 'email-taken' }
  | { code: 'person-has-account' }
  | { code: 'too-many-tries'; retryAfterSeconds: number }

/**
 * Make the organisation and its first administrator against the one-time code that the terminal printed. The administrator's role is a fact of the
 * organisation's office project: the one grant that nobody else could make. Refuses `invalid`, `too-many-tries`, `set-up-already`, `code-wrong`.
 */
export async function setUp(input: unknown): Promise<Result<{ tenant: string; userId: string }, SetUpRefusal>> {
  const form = SetUp.safeParse(input)
  if (!form.success) return refused({ code: 'invalid', fields: z.flattenError(form.error).fieldErrors })
  const { store } = await loadRuntime()
  const counted = await countTry(store.db.queries, 'setup-code', CODE_TRIES)
  if (!counted.ok) return counted
  const { code, organisation, utcOffset, ...who } = form.data
  const passwordHash = await hashPassword(who.password)
  const made = await store.db.queries.transaction(
    async (tx): Promise<Result<{ tenant: string; userId: string }, SetUpRefusal>> => {
      await tx.execute(sql`select pg_advisory_xact_lock(hashtextextended('set-up', 0))`)
      if (!(await needsSetup(tx))) return refused({ code: 'set-up-already' })
      const kept = await tx.select({ digest: setupCodes.codeSha256 }).from(setupCodes).where(isNull(setupCodes.usedAt))
      const match = matchingCode(
        code,
        kept.map((one) => one.digest),
      )
      if (!match) return refused({ code: 'code-wrong' })
      await tx.update(setupCodes).set({ usedAt: new Date() }).where(eq(setupCodes.codeSha256, match))
      const tenant = randomUUID()
      await tx
        .insert(tenants)
        .values({ id: tenant, slug: `${slugOf(organisation)}-${tenant.slice(0, 8)}`, name: organisation })
      const account = await insertAccount(tx, {
        name: who.name,
        email: who.email,
        personId: who.personId,
        tenant,
        passwordHash,
      })
      return account.ok ? done({ tenant, userId: account.value.userId }) : account
    },
  )
  if (!made.ok) return made
  const facts = firstFacts(who.personId, who.name, organisation, utcOffset, momentOf(instantOf(store.now()), utcOffset))
  const appended = await appendFacts(store, made.value.tenant, facts, { receivedBy: who.personId })
  if (!appended.ok) throw new Error(`The first facts of the organisation were refused: ${appended.error.code}`)
  return made
}

function slugOf(name: string): string {
  return (
    name
      .toLowerCase()
      .replaceAll(/[^a-z0-9]+/g, '-')
      .replaceAll(/^-|-$/g, '')
      .slice(0, 40) || 'organisation'
  )
}

function firstFacts(person: PersonId, name: string, organisation: string, utcOffset: string, now: string): Fact[] {
  const office = streamOf('project', 'office')
  const envelope = () => ({
    v: 1 as const,
    id: FactId.parse(makeId()),
    observedAt: now,
    observedBy: person,
    enteredAt: now,
    enteredBy: person,
    device: { id: 'server', clockOffsetMs: 0 },
  })
  return [
    {
      ...envelope(),
      stream: streamOf('person', person),
      kind: 'person-registered',
      body: { name, party: 'inspection body', title: 'Administrator' },
    },
    {
      ...envelope(),
      stream: office,
      kind: 'project-opened',
      body: { name: organisation, site: 'Office', utcOffset, owner: organisation },
    },
    {
      ...envelope(),
      stream: office,
      kind: 'role-granted',
      body: { person, role: 'administrator', approve: false, from: dayOf(now) },
    },
  ]
}
