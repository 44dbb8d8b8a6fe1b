import { loadRuntime } from '@/lib/server/runtime/runtime'
import { needsSetup } from './setup-code'

/** Whether the store has an organisation. */
export async function isSetUp(): Promise<boolean> {
  const { store } = await loadRuntime()
  return !(await needsSetup(store.db.queries))
}
