import { type Auth, createAuth } from '@/lib/server/auth/auth'
import { loadSecret } from '@/lib/server/auth/load-secret'
import { type OpenStore, openStore } from '@/lib/server/store/open-store'
import { baseUrl, trustedOrigins } from './base-url'

/** What a process works with: one store, one sign-in. */
export type Runtime = { store: OpenStore; auth: Auth }

const KEY = Symbol.for('underwrap.runtime')
const holder = globalThis as { [KEY]?: Promise<Runtime> }

/**
 * The process's runtime, opened at first use and shared by pages, actions, routes and jobs, whichever bundle they are in. A failed opening is tried
 * again at the next call. @throws StoreUnavailable when there is no database
 */
export function loadRuntime(): Promise<Runtime> {
  holder[KEY] ??= openRuntime().catch((error: unknown) => {
    delete holder[KEY]
    throw error
  })
  return holder[KEY]
}

/** Give the process a store that is open already: the command line, the seed and tests. It replaces an earlier one, which stays the caller's to close. */
export async function provideStore(store: OpenStore): Promise<Runtime> {
  const runtime = runtimeOf(store)
  holder[KEY] = runtime
  return runtime
}

/** Close what was opened and forget it; nothing when nothing was. */
export async function closeRuntime(): Promise<void> {
  const opened = holder[KEY]
  delete holder[KEY]
  if (opened) await (await opened).store.close()
}

async function openRuntime(): Promise<Runtime> {
  const store = await openStore()
  return runtimeOf(store)
}

async function runtimeOf(store: OpenStore): Promise<Runtime> {
  const secret = await loadSecret(store.dataDir)
  return {
    store,
    auth: createAuth({ db: store.db.queries, secret, baseUrl: baseUrl(), trustedOrigins: trustedOrigins() }),
  }
}
