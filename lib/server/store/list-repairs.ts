import { asc, eq } from 'drizzle-orm'
import { schema } from '@/db/client'
import type { RepairRow } from './repair-row'
import { settleDebts } from './settle-debts'
import type { Store, TenantId } from './store'

/** Every repair of a tenant as it stands now, by number. */
export async function listRepairs(store: Store, tenant: TenantId): Promise<RepairRow[]> {
  await settleDebts(store, tenant)
  const { repairs } = schema
  const rows = await store.db.queries
    .select({ row: repairs.row })
    .from(repairs)
    .where(eq(repairs.tenant, tenant))
    .orderBy(asc(repairs.number))
  return rows.map((one) => one.row as RepairRow)
}
