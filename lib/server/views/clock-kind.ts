import { eq } from 'drizzle-orm'
import { tenants } from '@/db/schema'
import type { Store, TenantId } from '@/lib/server/store/store'

/** Which clock a page follows: the device's own in real use; the server's in a demonstration or a test. */
export async function clockKindOf(store: Store, tenant: TenantId): Promise<'real' | 'demo' | 'test'> {
  if (process.env.UNDERWRAP_TEST_CLOCK) return 'test'
  const [row] = await store.db.queries.select({ isDemo: tenants.isDemo }).from(tenants).where(eq(tenants.id, tenant))
  return row?.isDemo ? 'demo' : 'real'
}
