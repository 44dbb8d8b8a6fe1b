import { randomUUID } from 'node:crypto'
import { and, count, eq, lte, min, sql } from 'drizzle-orm'
import { verification } from '@/db/auth-schema'
import type { Queries } from '@/db/client'
import { done, type Result, refused } from '@/lib/domain/result'

export type TryLimit = { max: number; windowSeconds: number }

/** Passwords of one account, in the sign-in page and at signatures: five wrong ones in a quarter of an hour. */
export const PASSWORD_TRIES: TryLimit = { max: 5, windowSeconds: 900 }
/** One-time codes, from anywhere. */
export const CODE_TRIES: TryLimit = { max: 10, windowSeconds: 900 }

/**
 * Count one try under a key, before its outcome is known; tries at once are counted one by one. Real time, never the store's clock.
 * Refuses `too-many-tries` with the seconds until the oldest try leaves the window.
 */
export async function countTry(
  db: Queries,
  key: string,
  limit: TryLimit,
): Promise<Result<null, { code: 'too-many-tries'; retryAfterSeconds: number }>> {
  const identifier = `try:${key}`
  return db.transaction(async (tx) => {
    await tx.execute(sql`select pg_advisory_xact_lock(hashtextextended(${identifier}, 0))`)
    const now = new Date()
    await tx.delete(verification).where(and(eq(verification.identifier, identifier), lte(verification.expiresAt, now)))
    const [tried] = await tx
      .select({ tries: count(), oldest: min(verification.expiresAt) })
      .from(verification)
      .where(eq(verification.identifier, identifier))
    if (tried && tried.tries >= limit.max) {
      const endsAt = tried.oldest?.getTime() ?? now.getTime()
      return refused({
        code: 'too-many-tries',
        retryAfterSeconds: Math.max(1, Math.ceil((endsAt - now.getTime()) / 1000)),
      })
    }
    const expiresAt = new Date(now.getTime() + limit.windowSeconds * 1000)
    await tx
      .insert(verification)
      .values({ id: randomUUID(), identifier, value: 'try', expiresAt, createdAt: now, updatedAt: now })
    return done(null)
  })
}

/** Forget the tries under a key, once one was right. */
export async function forgetTries(db: Queries, key: string): Promise<void> {
  await db.delete(verification).where(eq(verification.identifier, `try:${key}`))
}
