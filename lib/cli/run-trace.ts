import { parseArgs } from 'node:util'
import { traceBatchView } from '@/lib/server/views/trace-batch-view'
import { PlainError } from './plain-error'
import { say } from './say'
import { showTrace } from './show-trace'
import { tenantFor, withStore } from './with-store'

/** `trace BATCH`: every repair, attempt, mix and ply that used a batch, with its mass balance. */
export async function runTrace(parameters: string[]): Promise<void> {
  const { values, positionals } = parseArgs({
    args: parameters,
    options: { json: { type: 'boolean' }, tenant: { type: 'string' } },
    allowPositionals: true,
    strict: true,
  })
  const [batch] = positionals
  if (!batch) throw new PlainError('Say which batch: underwrap trace BATCH')
  await withStore(async (store) => {
    const tenant = await tenantFor(store, values.tenant)
    const view = await traceBatchView(store, tenant.id, batch)
    if (!view) throw new PlainError(`There is no batch ${batch} in this store.`)
    await say(values.json ? JSON.stringify(view, null, 2) : showTrace(view))
  })
}
