import { createHash, randomBytes, randomUUID } from 'node:crypto'
import { and, eq, gt } from 'drizzle-orm'
import * as z from 'zod'
import { verification } from '@/db/auth-schema'
import type { Queries } from '@/db/client'
import { PersonId } from '@/lib/domain/facts/fact'

/** What an invitation stands for; it is kept under the digest of its token. */
export const Invited = z.strictObject({
  tenant: z.string(),
  organisation: z.string(),
  person: PersonId,
  name: z.string(),
  email: z.string(),
  invitedBy: PersonId,
})
export type Invited = z.infer<typeof Invited>

const FORTNIGHT_MS = 14 * 86_400_000

/** Keep an invitation for a fortnight. @returns the token of its link; it is kept nowhere else */
export async function keepInvitation(db: Queries, invited: Invited): Promise<{ token: string; expiresAt: Date }> {
  const token = randomBytes(24).toString('base64url')
  const now = new Date()
  const expiresAt = new Date(now.getTime() + FORTNIGHT_MS)
  await db.insert(verification).values({
    id: randomUUID(),
    identifier: identifierOf(token),
    value: JSON.stringify(invited),
    expiresAt,
    createdAt: now,
    updatedAt: now,
  })
  return { token, expiresAt }
}

/** The invitation of a token; null when there is none, it was taken up, or its time ran out. */
export async function loadInvitation(db: Queries, token: string): Promise<Invited | null> {
  const [kept] = await db
    .select()
    .from(verification)
    .where(and(eq(verification.identifier, identifierOf(token)), gt(verification.expiresAt, new Date())))
  return kept ? Invited.parse(JSON.parse(kept.value)) : null
}

/** Take an invitation up, once: the second of two at once gets null. Give it the caller's transaction. */
export async function takeInvitation(tx: Pick<Queries, 'delete'>, token: string): Promise<Invited | null> {
  const [taken] = await tx
    .delete(verification)
    .where(and(eq(verification.identifier, identifierOf(token)), gt(verification.expiresAt, new Date())))
    .returning({ value: verification.value })
  return taken ? Invited.parse(JSON.parse(taken.value)) : null
}

function identifierOf(token: string): string {
  return `invitation:${createHash('sha256').update(token).digest('hex')}`
}
