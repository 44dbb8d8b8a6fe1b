import type { TestStore } from './test-store'

/** Counts every query that a store sends from now on; the answer tells how many there were so far. */
export function countQueries(store: TestStore): () => number {
  let asked = 0
  const counted = new WeakSet<object>()
  store.db.pool.on('acquire', (client) => {
    if (counted.has(client)) return
    counted.add(client)
    const query = client.query.bind(client) as (...given: unknown[]) => unknown
    Object.assign(client, {
      query: (...given: unknown[]) => {
        asked += 1
        return query(...given)
      },
    })
  })
  return () => asked
}
