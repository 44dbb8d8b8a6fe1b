import { and, asc, eq, gt } from 'drizzle-orm'
import { schema } from '@/db/client'
import { type StreamId, streamKind } from '@/lib/domain/facts/fact'
import { citesOf } from '@/lib/domain/fold/cites-of'
import type { Transaction } from './heads'
import { insertLooks } from './insert-looks'
import { parseRow } from './load-stream'
import { settleDebts } from './settle-debts'
import type { Store, TenantId } from './store'

const ROWS_AT_ONCE = 500

/**
 * Drop every projection of a tenant and rebuild it from the facts, checking each fact's digest on the way. Appends wait meanwhile.
 * Nothing that a person sees changes. @throws StoredFactBroken, leaving the projections as they were
 */
export async function reproject(store: Store, tenant: TenantId): Promise<{ repairCount: number; factCount: number }> {
  const counted = await store.db.queries.transaction((tx) => reprojectIn(tx, tenant))
  await settleDebts(store, tenant)
  return counted
}

/** The part of it that needs no fold, in a transaction of the caller's; every repair then owes a fold. @throws StoredFactBroken */
export async function reprojectIn(
  tx: Transaction,
  tenant: TenantId,
): Promise<{ repairCount: number; factCount: number }> {
  const { tenants, factCites, photos, issues, projectionDebts, repairs, uses } = schema
  await tx.select({ id: tenants.id }).from(tenants).where(eq(tenants.id, tenant)).for('update')
  for (const table of [factCites, photos, issues, projectionDebts, repairs, uses])
    await tx.delete(table).where(eq(table.tenant, tenant))
  const found = new Map<StreamId, number>()
  let factCount = 0
  for (
    let rows = await rowsAfter(tx, tenant, -1);
    rows.length > 0;
    rows = await rowsAfter(tx, tenant, rows.at(-1)?.leaf ?? -1)
  ) {
    const facts = rows.map((row) => parseRow(row).fact)
    const cites = facts.flatMap((fact) =>
      citesOf(fact).map((toStream) => ({ tenant, factId: fact.id, fromStream: fact.stream, toStream })),
    )
    if (cites.length > 0) await tx.insert(factCites).values(cites)
    await insertLooks(tx, tenant, facts)
    for (const [at, fact] of facts.entries())
      if (streamKind(fact.stream) === 'repair') found.set(fact.stream, rows[at]?.leaf ?? 0)
    factCount += rows.length
  }
  if (found.size > 0)
    await tx.insert(projectionDebts).values([...found].map(([repair, leaf]) => ({ tenant, repair, leaf })))
  return { repairCount: found.size, factCount }
}

function rowsAfter(tx: Transaction, tenant: TenantId, leaf: number) {
  const { facts } = schema
  return tx
    .select()
    .from(facts)
    .where(and(eq(facts.tenant, tenant), gt(facts.leaf, leaf)))
    .orderBy(asc(facts.leaf))
    .limit(ROWS_AT_ONCE)
}
