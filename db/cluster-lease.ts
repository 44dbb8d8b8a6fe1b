import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import pg from 'pg'
import { loadSecret, urlOf } from './server-secret'

/** Advisory lock in the database `postgres`: shared by every process that uses the server, exclusive for the one that stops it. */
const LEASE = 7_719_001

/** A process's say that it uses the server. It ends with the process, however that ends. */
export type ClusterLease = {
  /** Give it up; true when nobody else uses the server and newcomers are held off, so that the caller may stop it. */
  release(): Promise<boolean>
  end(): Promise<void>
}

/**
 * Take a lease on the running server of a data folder; null when there is none, or when it is just being stopped.
 * Waits while it is starting up.
 */
export async function takeLease(dataDir: string): Promise<ClusterLease | null> {
  const port = runningPort(dataDir)
  const secret = loadSecret(dataDir)
  if (port === null || !secret) return null
  for (let tries = 0; tries < 100; tries += 1) {
    const client = new pg.Client({
      connectionString: urlOf({ ...secret, port }, 'postgres'),
      application_name: 'underwrap lease',
      keepAlive: true,
      connectionTimeoutMillis: 5000,
    })
    client.on('error', () => {})
    try {
      await client.connect()
      await client.query('select pg_advisory_lock_shared($1)', [LEASE])
      return {
        async release() {
          await client.query('select pg_advisory_unlock_shared($1)', [LEASE])
          const free = await client.query<{ free: boolean }>('select pg_try_advisory_lock($1) as free', [LEASE])
          return free.rows[0]?.free === true
        },
        end: () => client.end().catch(() => {}),
      }
    } catch (error) {
      await client.end().catch(() => {})
      if ((error as { code?: string }).code !== '57P03') return null
      await new Promise((settle) => setTimeout(settle, 100))
    }
  }
  return null
}

/** The port that postmaster.pid tells, or null when no server claims the folder. */
export function runningPort(dataDir: string): number | null {
  try {
    const port = Number(readFileSync(join(dataDir, 'db', 'postmaster.pid'), 'utf8').split('\n')[3])
    return Number.isInteger(port) && port > 0 ? port : null
  } catch {
    return null
  }
}
