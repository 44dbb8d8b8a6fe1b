import { randomBytes } from 'node:crypto'
import { eq } from 'drizzle-orm'
import * as z from 'zod'
import { type Database, schema } from '@/db/client'

const STORE_ID = 'store-id'

/** The id of this store, 16 hex digits, drawn at the first question and kept with the store. */
export async function loadStoreId(db: Database): Promise<string> {
  const { storeMarks } = schema
  await db.queries
    .insert(storeMarks)
    .values({ key: STORE_ID, value: randomBytes(8).toString('hex') })
    .onConflictDoNothing()
  const [mark] = await db.queries.select().from(storeMarks).where(eq(storeMarks.key, STORE_ID))
  return z
    .string()
    .regex(/^[0-9a-f]{16}$/)
    .parse(mark?.value)
}
