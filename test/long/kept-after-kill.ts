import { PersonId } from '@/lib/domain/facts/fact'
import { sha256Of } from '@/lib/evidence/sha256'
import { checkStore } from '@/lib/server/check/check-store'
import { checkpointNow, rootAt } from '@/lib/server/log/checkpoint-now'
import type { OpenStore } from '@/lib/server/store/open-store'

/** What a writer was told is kept. */
export type Told = {
  facts: string[]
  heads: { size: number; root: string }[]
  issues: { revision: number; sha256: string }[]
}

const TENANT = 'tenant-a'

/** What of it is not kept, and what of the log or the issues is torn. `isThorough` runs check-store as well. */
export async function unlessKept(store: OpenStore, told: Told, isThorough: boolean): Promise<string[]> {
  const faults: string[] = []
  const rows = async (text: string, values: unknown[] = []) => (await store.db.pool.query(text, values)).rows
  const lost = await rows(
    'select t.id from unnest($1::uuid[]) t (id) where not exists (select 1 from facts f where f.tenant = $2 and f.id = t.id)',
    [told.facts, TENANT],
  )
  for (const { id } of lost) faults.push(`the acknowledged fact ${id} is lost`)
  const [log] = await rows(
    'select count(*)::int as count, max(leaf)::int + 1 as next, (select leaf_count::int from tenants where id = $1) as received from facts where tenant = $1',
    [TENANT],
  )
  if (log.count !== log.next || log.count !== log.received) faults.push(`the log has a gap: ${JSON.stringify(log)}`)
  const torn = await rows(
    'select stream from facts where tenant = $1 group by stream having count(*) <> max(position) or min(position) <> 1',
    [TENANT],
  )
  for (const { stream } of torn) faults.push(`${stream} has a gap`)
  await checkpointNow(store, TENANT, PersonId.parse('QI')).catch((cause: Error) => faults.push(cause.message))
  for (const { size, root } of told.heads)
    if ((await rootAt(store, TENANT, size)) !== root) faults.push(`the head over ${size} facts is no longer contained`)
  faults.push(...(await issuesTorn(store, told, rows)))
  if (isThorough) await checkStore(store, (line) => line.startsWith('broken') && faults.push(line))
  return faults
}

async function issuesTorn(
  store: OpenStore,
  told: Told,
  rows: (text: string, values?: unknown[]) => Promise<{ revision: number; sha256: string }[]>,
): Promise<string[]> {
  const faults: string[] = []
  const issues = await rows(
    `select (convert_from(bytes, 'UTF8')::json->'body'->>'revision')::int as revision, convert_from(bytes, 'UTF8')::json->'body'->>'sha256' as sha256
      from facts where tenant = $1 and kind = 'dossier-issued' order by position`,
    [TENANT],
  )
  for (const [at, issue] of issues.entries())
    if (issue.revision !== at) faults.push(`issue ${at} has revision ${issue.revision}`)
  for (const { revision, sha256 } of told.issues)
    if (issues[revision]?.sha256 !== sha256) faults.push(`the acknowledged issue ${revision} is lost`)
  for (const { revision, sha256 } of issues.slice(-5)) {
    const bytes = await store.photos.read(sha256)
    if (!bytes || sha256Of(bytes) !== sha256) faults.push(`issue ${revision} has no whole file`)
  }
  return faults
}
