import { readFileSync } from 'node:fs'
import { eq } from 'drizzle-orm'
import { type Database, schema } from '@/db/client'
import { instantOf, Moment, momentOf, showOffset } from '@/lib/domain/time'

/** Where a demo store's time starts, at its first serving. */
export const DEMO_STARTS_AT: Moment = '2026-05-29T08:00:00+01:00'
const DEMO_ORIGIN = 'demo-first-served'
const TEST_STORE = 'test-store'

/** The real time, written with this machine's offset. */
export function realNow(): Moment {
  const date = new Date()
  return momentOf(date.getTime(), showOffset(-date.getTimezoneOffset()))
}

/**
 * The clock of a store: real time, or the demo's, which starts at its first serving and runs on, or the moment in a test's file.
 * @throws Error when a test clock is asked for a store that was not made for tests
 */
export async function clockOf(db: Database, testClockFile?: string): Promise<() => Moment> {
  if (testClockFile) {
    if (!(await loadMark(db, TEST_STORE)))
      throw new Error('A test clock is refused: this store was not made for tests.')
    return () => Moment.parse(readFileSync(testClockFile, 'utf8').trim())
  }
  const [demo] = await db.queries
    .select({ id: schema.tenants.id })
    .from(schema.tenants)
    .where(eq(schema.tenants.isDemo, true))
    .limit(1)
  if (!demo) return realNow
  await db.queries
    .insert(schema.storeMarks)
    .values({ key: DEMO_ORIGIN, value: new Date().toISOString() })
    .onConflictDoNothing()
  const servedFirst = Date.parse(String(await loadMark(db, DEMO_ORIGIN)))
  return () => momentOf(instantOf(DEMO_STARTS_AT) + (Date.now() - servedFirst), DEMO_STARTS_AT.slice(-6))
}

/** Mark an empty store as one for tests: only such a store takes a test clock. @throws Error when the store holds a tenant */
export async function markAsTestStore(db: Database): Promise<void> {
  if (await loadMark(db, TEST_STORE)) return
  const [tenant] = await db.queries.select({ id: schema.tenants.id }).from(schema.tenants).limit(1)
  if (tenant) throw new Error('A store that holds a record cannot become a test store.')
  await db.queries.insert(schema.storeMarks).values({ key: TEST_STORE, value: true }).onConflictDoNothing()
}

/** Keep a mark of the store itself. */
export async function keepMark(db: Database, key: string): Promise<void> {
  await db.queries.insert(schema.storeMarks).values({ key, value: true }).onConflictDoNothing()
}

/** Whether the store has a mark. */
export async function hasMark(db: Database, key: string): Promise<boolean> {
  return (await loadMark(db, key)) !== null
}

async function loadMark(db: Database, key: string): Promise<unknown> {
  const [mark] = await db.queries.select().from(schema.storeMarks).where(eq(schema.storeMarks.key, key))
  return mark?.value ?? null
}
