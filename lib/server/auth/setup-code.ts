import { createHash, randomInt, timingSafeEqual } from 'node:crypto'
import { isNull } from 'drizzle-orm'
import type { Queries } from '@/db/client'
import { setupCodes, tenants } from '@/db/schema'

const ALPHABET = '23456789ABCDEFGHJKMNPQRSTUVWXYZ'
const GROUPS = 4
const GROUP_LENGTH = 4

/**
 * Make the one-time code of the first-administrator setup and keep its digest; an unused earlier code stops working. The caller prints it.
 * @returns the code as `ABCD-EFGH-JKMN-PQRS`, or null when there is an organisation already: then there is nothing to set up
 */
export async function makeSetupCode(db: Queries): Promise<string | null> {
  if (!(await needsSetup(db))) return null
  const code = Array.from({ length: GROUPS }, () =>
    Array.from({ length: GROUP_LENGTH }, () => ALPHABET[randomInt(ALPHABET.length)]).join(''),
  ).join('-')
  await db.transaction(async (tx) => {
    await tx.delete(setupCodes).where(isNull(setupCodes.usedAt))
    await tx.insert(setupCodes).values({ codeSha256: digestOf(code), madeAt: new Date() })
  })
  return code
}

/** Whether the store has no organisation yet. */
export async function needsSetup(db: Pick<Queries, 'select'>): Promise<boolean> {
  const [first] = await db.select({ id: tenants.id }).from(tenants).limit(1)
  return first === undefined
}

/** The digest under which an unused code is kept that equals the one given, compared in constant time; null when none does. Case and hyphens do not matter. */
export function matchingCode(given: string, keptDigests: readonly string[]): string | null {
  const asked = Buffer.from(digestOf(given), 'hex')
  let match: string | null = null
  for (const kept of keptDigests) if (timingSafeEqual(asked, Buffer.from(kept, 'hex'))) match = kept
  return match
}

function digestOf(code: string): string {
  const plain = code
    .toUpperCase()
    .replaceAll(/[^A-Z0-9]/g, '')
    .slice(0, 64)
  return createHash('sha256').update(`setup-code:${plain}`).digest('hex')
}
