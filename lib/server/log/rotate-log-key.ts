import { randomBytes } from 'node:crypto'
import type { PersonId } from '@/lib/domain/facts/fact'
import { endorse } from '@/lib/evidence/endorsement'
import { makeLogKey } from '@/lib/evidence/log-key'
import type { Store, TenantId } from '@/lib/server/store/store'
import { appendKeyFact, loadKeysTaken } from './key-facts'
import { dropLogKey, keepLogKey, loadLogKey } from './key-folder'
import { type Log, openLog, originOf } from './open-log'

/**
 * Take a new log key; the former one endorses it when it is still here, and is then removed. A log without a key gets its first.
 * @throws LogBroken when there is no such tenant or the former key's file holds another key
 */
export async function rotateLogKey(
  store: Store,
  tenant: TenantId,
  actor: PersonId,
  reason: string,
): Promise<Log & { isEndorsed: boolean }> {
  const origin = await originOf(store, tenant)
  const { present, length } = await loadKeysTaken(store, tenant)
  if (!present) return { ...(await openLog(store, tenant, actor)), isEndorsed: false }
  const former = await loadLogKey(store.dataDir, present)
  const key = makeLogKey(origin, randomBytes(32))
  await keepLogKey(store.dataDir, key)
  const endorsement = former ? endorse(former, key.vkey.text) : null
  const body = { vkey: key.vkey.text, replaces: present.text, endorsement, reason }
  if (!(await appendKeyFact(store, tenant, { kind: 'log-key-taken', body, actor, length }))) {
    await dropLogKey(store.dataDir, key.vkey)
    return rotateLogKey(store, tenant, actor, reason)
  }
  await dropLogKey(store.dataDir, present)
  return { origin, key, isEndorsed: endorsement !== null }
}
