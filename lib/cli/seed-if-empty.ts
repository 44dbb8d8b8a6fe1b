import { DEMO_PASSWORD, DEMO_PEOPLE } from '@/lib/server/demo/demo-people'
import type { OpenStore } from '@/lib/server/store/open-store'
import { listTenants } from '@/lib/server/store/tenants'
import { PlainError } from './plain-error'

/** Seed the demo into an empty store; a store that holds it already is left as it is. @throws PlainError when the store holds a real record */
export async function seedIfEmpty(store: OpenStore): Promise<void> {
  const tenants = await listTenants(store)
  if (tenants.some((one) => !one.isDemo)) throw new PlainError('This store holds a real record: the demo needs a store of its own (UNDERWRAP_DATA).')
  if (tenants.length > 0) return
  const { seedDemo } = await import('@/lib/server/demo/seed-demo')
  await seedDemo(store)
  await store.readClock()
}

/** Who can sign in to the demo, one line each. */
export function showSignIns(): string[] {
  const width = Math.max(...DEMO_PEOPLE.map((one) => one.email.length))
  return [`Sign in as one of these, password ${DEMO_PASSWORD}`, ...DEMO_PEOPLE.map((one) => `  ${one.email.padEnd(width)}  ${one.name}, ${one.title}`)]
}
