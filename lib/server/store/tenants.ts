import { asc, eq } from 'drizzle-orm'
import { schema } from '@/db/client'
import type { Store, TenantId } from './store'

export type Tenant = { id: TenantId; slug: string; name: string; isDemo: boolean }

/** Make a tenant for an organisation that exists (its id, slug and name). @throws when id or slug is taken */
export async function makeTenant(
  store: Pick<Store, 'db'>,
  tenant: { id: TenantId; slug: string; name: string; isDemo?: boolean },
): Promise<void> {
  await store.db.queries
    .insert(schema.tenants)
    .values({ id: tenant.id, slug: tenant.slug, name: tenant.name, isDemo: tenant.isDemo ?? false })
}

/** Every tenant of the store, by slug. */
export async function listTenants(store: Pick<Store, 'db'>): Promise<Tenant[]> {
  const { id, slug, name, isDemo } = schema.tenants
  return store.db.queries.select({ id, slug, name, isDemo }).from(schema.tenants).orderBy(asc(slug))
}

/** One tenant by id; null when there is none. */
export async function loadTenant(store: Pick<Store, 'db'>, tenant: TenantId): Promise<Tenant | null> {
  const { id, slug, name, isDemo } = schema.tenants
  const [found] = await store.db.queries.select({ id, slug, name, isDemo }).from(schema.tenants).where(eq(id, tenant))
  return found ?? null
}
