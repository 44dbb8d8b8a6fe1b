import { seedDemo } from '@/lib/server/demo/seed-demo'
import { listTenants } from '@/lib/server/store/tenants'
import { PlainError } from './plain-error'
import { say } from './say'
import { withStore } from './with-store'

/** `seed-demo`: enter the demo's four repairs through the append path, into an empty store. */
export async function runSeedDemo(): Promise<void> {
  await withStore(async (store) => {
    if ((await listTenants(store)).length > 0) throw new PlainError('The store is not empty: the demo only goes into an empty one.')
    const { tenant } = await seedDemo(store)
    await say(`demo seeded: organisation ${tenant}`)
  })
}
