import { eq } from 'drizzle-orm'
import { schema } from '@/db/client'
import { signHead } from '@/lib/server/log/checkpoint-now'
import { loadKeysTaken } from '@/lib/server/log/key-facts'
import { MACHINE } from '@/lib/server/log/machine'
import { type Log, openLog } from '@/lib/server/log/open-log'
import type { Store, TenantId } from '@/lib/server/store/store'
import { listTenants } from '@/lib/server/store/tenants'
import type { BackupManifest } from './manifest'

/** Open every tenant's log, so that its key is in the backup. @throws LogBroken */
export async function openLogs(store: Store): Promise<Map<TenantId, Log>> {
  const logs = new Map<TenantId, Log>()
  for (const { id } of await listTenants(store)) logs.set(id, await openLog(store, id, MACHINE))
  return logs
}

/** The head of every log exactly as the snapshot holds it, signed. @throws LogBroken; Error when a tenant or a key was added since the logs were opened */
export async function headsInSnapshot(
  store: Store,
  snapshot: Store,
  logs: ReadonlyMap<TenantId, Log>,
): Promise<BackupManifest['heads']> {
  const heads: BackupManifest['heads'] = []
  for (const { id: tenant } of await listTenants(snapshot)) {
    const log = logs.get(tenant)
    const { present } = await loadKeysTaken(snapshot, tenant)
    const [row] = await snapshot.db.queries
      .select({ size: schema.tenants.leafCount })
      .from(schema.tenants)
      .where(eq(schema.tenants.id, tenant))
    if (!log || !row || present?.text !== log.key.vkey.text)
      throw new Error('An organisation or a log key was added while the backup began: run it again.')
    const { text, vkey } = await signHead(store, tenant, log, row.size)
    heads.push({ tenant, checkpoint: text, vkey })
  }
  return heads
}
