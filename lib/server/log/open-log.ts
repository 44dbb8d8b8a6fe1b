import { randomBytes } from 'node:crypto'
import type { PersonId } from '@/lib/domain/facts/fact'
import type { Moment } from '@/lib/domain/time'
import { type LogKey, makeLogKey } from '@/lib/evidence/log-key'
import { writeOrigin } from '@/lib/evidence/origin'
import type { Store, TenantId } from '@/lib/server/store/store'
import { loadTenant } from '@/lib/server/store/tenants'
import { appendKeyFact, loadKeysTaken } from './key-facts'
import { dropLogKey, keepLogKey, keyFile, loadLogKey } from './key-folder'
import { LogBroken } from './log-broken'
import { loadStoreId } from './store-id'

/** A tenant's log with the key that signs it now. */
export type Log = { origin: string; key: LogKey }

/**
 * Open a tenant's log. At the first use its key is made: the secret in the data folder's `keys`, the public half as a fact of `key:log`. Two processes
 * that do so at once end with one key. `receivedAt` is for the demo's seed alone.
 * @throws LogBroken when there is no such tenant, or the secret key is not in the data folder or is another
 */
export async function openLog(store: Store, tenant: TenantId, actor: PersonId, receivedAt?: Moment): Promise<Log> {
  const origin = await originOf(store, tenant)
  const known = await loadKeysTaken(store, tenant)
  if (known.present) {
    const key = await loadLogKey(store.dataDir, known.present)
    if (key) return { origin, key }
    throw new LogBroken(
      'key-missing',
      `The key that signs the log is not here: put ${keyFile(store.dataDir, known.present)} back, or take a new key with npm run underwrap -- rotate-log-key.`,
    )
  }
  const key = makeLogKey(origin, randomBytes(32))
  await keepLogKey(store.dataDir, key)
  const body = { vkey: key.vkey.text, replaces: null, endorsement: null, reason: 'first key of this log' }
  if (await appendKeyFact(store, tenant, { kind: 'log-key-taken', body, actor, length: 0, receivedAt }))
    return { origin, key }
  await dropLogKey(store.dataDir, key.vkey)
  return openLog(store, tenant, actor, receivedAt)
}

/** The origin of a tenant's log. @throws LogBroken `tenant-unknown` */
export async function originOf(store: Store, tenant: TenantId): Promise<string> {
  const found = await loadTenant(store, tenant)
  if (!found) throw new LogBroken('tenant-unknown', 'There is no such organisation in this store.')
  return writeOrigin({ storeId: await loadStoreId(store.db), tenant, isDemo: found.isDemo })
}
