import { and, eq, lte, sql } from 'drizzle-orm'
import { schema } from '@/db/client'
import type { StreamId } from '@/lib/domain/facts/fact'
import { instantOf } from '@/lib/domain/time'
import { loadRepair } from './load-repair'
import { projectionOf } from './projection-of'
import type { Store, TenantId } from './store'

const settling = new WeakMap<Store['db'], Promise<unknown>>()

/**
 * Bring the folded projections of a tenant up to its facts and to the present: every repair that was touched since, and every one that time
 * alone has changed. One run at a time in a process. Every reader of projections calls this first.
 */
export function settleDebts(store: Store, tenant: TenantId): Promise<void> {
  const run = (settling.get(store.db) ?? Promise.resolve()).catch(() => {}).then(() => settleAll(store, tenant))
  settling.set(store.db, run)
  return run
}

async function settleAll(store: Store, tenant: TenantId): Promise<void> {
  const { projectionDebts, repairs } = schema
  const owed = await store.db.queries
    .select({ repair: projectionDebts.repair })
    .from(projectionDebts)
    .where(eq(projectionDebts.tenant, tenant))
  const due = await store.db.queries
    .select({ repair: repairs.stream })
    .from(repairs)
    .where(and(eq(repairs.tenant, tenant), lte(repairs.changesAt, new Date(instantOf(store.now())))))
  for (const repair of new Set([...owed, ...due].map((row) => row.repair as StreamId)))
    await projectRepair(store, tenant, repair)
}

async function projectRepair(store: Store, tenant: TenantId, repair: StreamId): Promise<void> {
  const { projectionDebts, repairs, uses } = schema
  await store.db.queries.transaction(async (tx) => {
    await tx.execute(sql`select pg_advisory_xact_lock(hashtextextended(${`projection ${tenant} ${repair}`}, 7719))`)
    const [debt] = await tx
      .select({ leaf: projectionDebts.leaf })
      .from(projectionDebts)
      .where(and(eq(projectionDebts.tenant, tenant), eq(projectionDebts.repair, repair)))
    const loaded = await loadRepair(store, tenant, repair)
    if (loaded) {
      const { values, uses: rows } = projectionOf(tenant, repair, loaded.state)
      await tx
        .insert(repairs)
        .values({ tenant, stream: repair, ...values })
        .onConflictDoUpdate({ target: [repairs.tenant, repairs.stream], set: values })
      await tx.delete(uses).where(and(eq(uses.tenant, tenant), eq(uses.repair, repair)))
      if (rows.length > 0) await tx.insert(uses).values(rows)
    }
    if (debt)
      await tx
        .delete(projectionDebts)
        .where(
          and(
            eq(projectionDebts.tenant, tenant),
            eq(projectionDebts.repair, repair),
            lte(projectionDebts.leaf, debt.leaf),
          ),
        )
  })
}
