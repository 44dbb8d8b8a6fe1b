import { parseArgs } from 'node:util'
import { rebuildTree } from '@/lib/server/log/extend-tree'
import { reproject } from '@/lib/server/store/reproject'
import { say } from './say'
import { tenantFor, withStore } from './with-store'

/** `reproject`: drop and rebuild every projection and the tree of the log from the facts. */
export async function runReproject(parameters: string[]): Promise<void> {
  const { values } = parseArgs({ args: parameters, options: { tenant: { type: 'string' } }, strict: true })
  await withStore(async (store) => {
    const tenant = await tenantFor(store, values.tenant)
    const { repairCount, factCount } = await reproject(store, tenant.id)
    await rebuildTree(store, tenant.id)
    await say(`${repairCount} repairs rebuilt from ${factCount} facts`)
  })
}
