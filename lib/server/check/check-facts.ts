import { and, asc, count, eq, gt } from 'drizzle-orm'
import { schema } from '@/db/client'
import type { Fact } from '@/lib/domain/facts/fact-kinds'
import { instantOf } from '@/lib/domain/time'
import { parseFactBytes } from '@/lib/evidence/fact-of-bytes'
import { sha256Of } from '@/lib/evidence/sha256'
import type { Store, TenantId } from '@/lib/server/store/store'
import { RESTORE, type Tally } from './tally'

export type FactRow = typeof schema.facts.$inferSelect
/** A stored fact that is what its digest and its row say. */
export type SoundFact = { row: FactRow; fact: Fact }

const ROWS_AT_ONCE = 500

/** Check every stored fact of a tenant: bytes against digest and row, leaf numbers and positions without gaps. The sound ones are handed on in order of leaf. */
export async function checkFacts(
  store: Store,
  tenant: TenantId,
  tally: Tally,
  onSound: (sound: SoundFact[]) => Promise<void>,
): Promise<void> {
  const positions = new Map<string, number>()
  let next = 0
  for (
    let rows = await rowsAfter(store, tenant, -1);
    rows.length > 0;
    rows = await rowsAfter(store, tenant, next - 1)
  ) {
    const sound: SoundFact[] = []
    for (const row of rows) {
      if (row.leaf !== next) tally.fail({ place: `log of ${tenant}`, problem: gap(next, row.leaf), remedy: RESTORE })
      next = row.leaf + 1
      const before = positions.get(row.stream) ?? 0
      positions.set(row.stream, row.position)
      const place = `fact ${row.position} of ${row.stream} (${tenant}, leaf ${row.leaf})`
      if (row.position !== before + 1)
        tally.fail({ place, problem: `it comes after position ${before} of its stream`, remedy: RESTORE })
      const checked = checkRow(row)
      if (typeof checked === 'string') tally.fail({ place, problem: checked, remedy: RESTORE })
      else {
        tally.pass()
        sound.push({ row, fact: checked })
      }
    }
    await onSound(sound)
  }
  await checkCount(store, tenant, tally, next)
}

function gap(expected: number, found: number): string {
  return found - expected === 1 ? `leaf ${expected} is missing` : `leaves ${expected} to ${found - 1} are missing`
}

/** The fact of a row, or what is wrong with it. */
function checkRow(row: FactRow): Fact | string {
  if (sha256Of(row.bytes) !== row.sha256) return 'its bytes do not give its digest'
  const parsed = parseFactBytes(row.bytes)
  if (!parsed.ok) return `its bytes are no fact (${parsed.error.code})`
  const fact = parsed.value
  const wrong = [
    fact.id === row.id ? [] : ['id'],
    fact.stream === row.stream ? [] : ['stream'],
    fact.kind === row.kind ? [] : ['kind'],
    instantOf(fact.observedAt) === row.observedAt.getTime() ? [] : ['time'],
  ].flat()
  return wrong.length > 0 ? `its row says another ${wrong.join(' and ')} than its bytes` : fact
}

async function checkCount(store: Store, tenant: TenantId, tally: Tally, found: number): Promise<void> {
  const [row] = await store.db.queries
    .select({ leafCount: schema.tenants.leafCount })
    .from(schema.tenants)
    .where(eq(schema.tenants.id, tenant))
  const counted = row?.leafCount ?? 0
  if (counted === found) tally.pass()
  else
    tally.fail({
      place: `log of ${tenant}`,
      problem: `${counted} facts were received and the last one stored is leaf ${found - 1}`,
      remedy: RESTORE,
    })
  const [{ rowCount } = { rowCount: 0 }] = await store.db.queries
    .select({ rowCount: count() })
    .from(schema.facts)
    .where(and(eq(schema.facts.tenant, tenant), gt(schema.facts.leaf, -1)))
  if (rowCount > counted)
    tally.fail({ place: `log of ${tenant}`, problem: `${rowCount} facts are stored`, remedy: RESTORE })
}

function rowsAfter(store: Store, tenant: TenantId, leaf: number): Promise<FactRow[]> {
  const { facts } = schema
  return store.db.queries
    .select()
    .from(facts)
    .where(and(eq(facts.tenant, tenant), gt(facts.leaf, leaf)))
    .orderBy(asc(facts.leaf))
    .limit(ROWS_AT_ONCE)
}
