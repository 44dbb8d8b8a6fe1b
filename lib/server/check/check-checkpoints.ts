import { asc, eq } from 'drizzle-orm'
import { schema } from '@/db/client'
import type { Fact } from '@/lib/domain/facts/fact-kinds'
import { base64Of } from '@/lib/evidence/base64'
import { parseCheckpoint, verifyCheckpoint } from '@/lib/evidence/checkpoint'
import { parseVkey } from '@/lib/evidence/vkey'
import type { Store, TenantId } from '@/lib/server/store/store'
import { RESTORE, type Tally } from './tally'

/** A head that was told to somebody: a signed checkpoint, or what an issued dossier says it holds. */
export type ToldHead = { place: string; size: number; root: string; note: string | null }
/** A log key with the number of leaves from which on it signs. */
export type KeyFrom = { vkey: string; fromSize: number }

/** Every checkpoint that was signed for a tenant. */
export async function loadSignedHeads(store: Store, tenant: TenantId): Promise<ToldHead[]> {
  const { checkpoints } = schema
  const rows = await store.db.queries
    .select()
    .from(checkpoints)
    .where(eq(checkpoints.tenant, tenant))
    .orderBy(asc(checkpoints.size))
  return rows.map(({ size, root, note }) => ({
    place: `checkpoint of ${tenant} over ${size} facts`,
    size,
    root,
    note,
  }))
}

/** The head that an issued dossier holds, when it was issued under one. */
export function headOfIssue(fact: Fact): ToldHead[] {
  if (fact.kind !== 'dossier-issued' || !fact.body.log) return []
  const place = `checkpoint in dossier ${fact.body.repair} revision ${fact.body.revision}`
  return [{ place, ...fact.body.log, note: null }]
}

/** Check that the log still contains each head, and that each signed one is signed by the key of its time. */
export function checkHeads(
  tally: Tally,
  heads: readonly ToldHead[],
  roots: ReadonlyMap<number, string>,
  keys: readonly KeyFrom[],
): void {
  for (const { place, size, root, note } of heads) {
    const found = roots.get(size)
    const fail = (problem: string) => tally.fail({ place, problem, remedy: RESTORE })
    if (found === undefined) fail('the stored facts do not reach it')
    else if (found !== root) fail('the log no longer contains it: facts before it were changed, dropped or added')
    else if (note !== null && !isSigned(note, { size, root }, keys))
      fail('its text is not signed by the key of its time')
    else tally.pass()
  }
}

function isSigned(note: string, head: { size: number; root: string }, keys: readonly KeyFrom[]): boolean {
  const parsed = parseCheckpoint(note)
  const key = parseVkey(keys.findLast((one) => one.fromSize <= head.size)?.vkey ?? '')
  return (
    parsed.ok &&
    key.ok &&
    parsed.value.size === head.size &&
    base64Of(parsed.value.root) === head.root &&
    verifyCheckpoint(parsed.value, key.value)
  )
}
