import { and, asc, eq, gte, inArray, lte } from 'drizzle-orm'
import { schema } from '@/db/client'
import type { FactId, StreamId } from '@/lib/domain/facts/fact'
import type { Use } from '@/lib/domain/fold/repair-state'
import { PointNo } from '@/lib/domain/specification'
import { instantOf, Moment } from '@/lib/domain/time'
import { settleDebts } from './settle-debts'
import type { Store, TenantId } from './store'

/** Every use of the named batches, instruments or persons in any repair of the tenant, in a period where one is said, by time. */
export async function listUses(
  store: Store,
  tenant: TenantId,
  of: readonly StreamId[],
  period: { from?: Moment; to?: Moment } = {},
): Promise<Use[]> {
  await settleDebts(store, tenant)
  const { uses } = schema
  if (of.length === 0) return []
  const rows = await store.db.queries
    .select()
    .from(uses)
    .where(
      and(
        eq(uses.tenant, tenant),
        inArray(uses.ofStream, [...of]),
        period.from ? gte(uses.atInstant, new Date(instantOf(period.from))) : undefined,
        period.to ? lte(uses.atInstant, new Date(instantOf(period.to))) : undefined,
      ),
    )
    .orderBy(asc(uses.atInstant), asc(uses.repair), asc(uses.no))
  return rows.map((row) => ({
    repair: row.repair as StreamId,
    point: PointNo.parse(row.point),
    attempt: row.attempt,
    fact: row.fact as FactId,
    at: Moment.parse(row.at),
    of: row.ofStream as StreamId,
    role: row.role,
    ...(row.into === null ? {} : { into: row.into }),
    ...(row.amount === null ? {} : { amount: row.amount as NonNullable<Use['amount']> }),
    ...(row.isOverruled ? { overruled: true as const } : {}),
  }))
}
