import { drizzle, type NodePgDatabase } from 'drizzle-orm/node-postgres'
import pg from 'pg'
import * as authSchema from './auth-schema'
import { openCluster } from './cluster'
import { migrate } from './migrate'
import * as projectionSchema from './projection-schema'
import * as recordSchema from './schema'
import { StoreUnavailable } from './store-unavailable'

export const schema = { ...recordSchema, ...projectionSchema, ...authSchema }
export type Queries = NodePgDatabase<typeof schema>

/** An open database with the newest schema. */
export type Database = {
  queries: Queries
  pool: pg.Pool
  url: string
  /** Whether the server is the embedded one of a data folder. */
  isEmbedded: boolean
  /** Give back every connection; stops an embedded server that nobody else uses. */
  close(): Promise<void>
}

const EMBEDDED_NAME = 'underwrap'
const OLDEST_MAJOR = 14

/** Where the embedded store lies: `UNDERWRAP_DATA`, else `./data`. */
export function dataFolder(): string {
  return process.env.UNDERWRAP_DATA || 'data'
}

/**
 * Open the database: `url` (else `DATABASE_URL`) names a server of PostgreSQL 14 or newer; without it the embedded server of
 * `dataDir` (else `UNDERWRAP_DATA`, else `./data`) is joined or started. Migrations run before it is handed out.
 * @throws StoreUnavailable with one plain line when there is no database to be had
 */
export async function openDatabase(
  options: { dataDir?: string; url?: string; connectionsAtMost?: number } = {},
): Promise<Database> {
  const given = options.url ?? (options.dataDir === undefined ? process.env.DATABASE_URL : undefined)
  const cluster = given ? null : await openCluster(options.dataDir ?? dataFolder())
  try {
    if (cluster) await makeDatabase(cluster.url('postgres'))
    const url = given || (cluster as { url(name: string): string }).url(EMBEDDED_NAME)
    const pool = new pg.Pool({
      connectionString: url,
      max: options.connectionsAtMost ?? 12,
      application_name: 'underwrap',
    })
    // A server that stops drops idle connections; without a listener that would end this process. The next query tells.
    pool.on('error', () => {})
    pool.on('connect', (client) => client.on('error', () => {}))
    try {
      await demandVersion(pool)
      await migrate(pool)
    } catch (cause) {
      await pool.end()
      throw cause
    }
    return {
      queries: drizzle(pool, { schema }),
      pool,
      url,
      isEmbedded: cluster !== null,
      async close() {
        if (!pool.ended) await pool.end()
        await cluster?.close()
      },
    }
  } catch (cause) {
    await cluster?.close()
    throw cause
  }
}

async function makeDatabase(url: string): Promise<void> {
  const client = new pg.Client({ connectionString: url })
  await client.connect()
  try {
    const known = await client.query('select 1 from pg_database where datname = $1', [EMBEDDED_NAME])
    if (known.rowCount === 0) await client.query(`create database ${EMBEDDED_NAME}`).catch(unlessMade)
  } finally {
    await client.end()
  }
}

function unlessMade(error: { code?: string }): void {
  // Two first starts at once: the other made it (42P04, or 23505 when both were in the middle of it).
  if (error.code !== '42P04' && error.code !== '23505') throw error
}

async function demandVersion(pool: pg.Pool): Promise<void> {
  const answer = await pool.query<{ server_version_num: string }>('show server_version_num').catch((cause: Error) => {
    throw new StoreUnavailable('connection-refused', `No connection to the database: ${cause.message}`, { cause })
  })
  const major = Math.floor(Number(answer.rows[0]?.server_version_num) / 10_000)
  if (major < OLDEST_MAJOR)
    throw new StoreUnavailable(
      'version-mismatch',
      `The server is PostgreSQL ${major}; ${OLDEST_MAJOR} or newer is needed.`,
    )
}
