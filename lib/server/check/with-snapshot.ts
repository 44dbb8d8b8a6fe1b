import { drizzle } from 'drizzle-orm/node-postgres'
import { schema } from '@/db/client'
import type { Store } from '@/lib/server/store/store'

/** Work on the store as it stands at one instant: what others write meanwhile is not seen, and nothing can be written. One query at a time. */
export async function withSnapshot<S extends Store, T>(store: S, work: (store: S) => Promise<T>): Promise<T> {
  const client = await store.db.pool.connect()
  try {
    await client.query('begin transaction isolation level repeatable read read only')
    const done = await work({ ...store, db: { ...store.db, queries: drizzle(client, { schema }) } })
    await client.query('rollback')
    client.release()
    return done
  } catch (cause) {
    client.release(true)
    throw cause
  }
}
