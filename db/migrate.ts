import { join } from 'node:path'
import { drizzle } from 'drizzle-orm/node-postgres'
import { migrate as applyMigrations } from 'drizzle-orm/node-postgres/migrator'
import type { Pool } from 'pg'

/** Advisory lock under which one process at a time migrates a database. */
const MIGRATING = 7_719_002

/** Bring a database to the newest schema; a second process waits and then finds nothing to do. */
export async function migrate(pool: Pool, folder = join(process.cwd(), 'db', 'migrations')): Promise<void> {
  const client = await pool.connect()
  try {
    await client.query('select pg_advisory_lock($1)', [MIGRATING])
    await client.query('set client_min_messages to warning')
    await applyMigrations(drizzle(client), { migrationsFolder: folder })
    await client.query('reset client_min_messages')
    await client.query('select pg_advisory_unlock($1)', [MIGRATING])
  } catch (cause) {
    client.release(true)
    throw cause
  }
  client.release()
}
