import { type OpenStore, openStore } from '@/lib/server/store/open-store'
import { listTenants, type Tenant } from '@/lib/server/store/tenants'
import { PlainError } from './plain-error'

/** Open the store of the environment, work, and close it again whatever happens. */
export async function withStore<T>(work: (store: OpenStore) => Promise<T>): Promise<T> {
  const store = await openStore()
  try {
    return await work(store)
  } finally {
    await store.close()
  }
}

/** The tenant that a command means: the one named by its slug, else the only one of the store. @throws PlainError when there is none or more than one */
export async function tenantFor(store: OpenStore, slug: string | undefined): Promise<Tenant> {
  const tenants = await listTenants(store)
  if (slug !== undefined) {
    const named = tenants.find((one) => one.slug === slug)
    if (!named) throw new PlainError(`There is no organisation ${slug} in this store.`)
    return named
  }
  const [only, ...others] = tenants
  if (!only) throw new PlainError('The store is empty: start it with npm start, or fill a demo with npm run demo.')
  if (others.length > 0)
    throw new PlainError(
      `The store holds several organisations: say which with --tenant (${tenants.map((one) => one.slug).join(', ')}).`,
    )
  return only
}
