import { DEMO_PASSWORD, DEMO_PEOPLE } from '@/lib/server/demo/demo-people'
import { hasMark, keepMark } from '@/lib/server/store/clock'
import type { OpenStore } from '@/lib/server/store/open-store'
import { listTenants } from '@/lib/server/store/tenants'
import { PlainError } from './plain-error'

const SEEDED = 'demo-seeded'

/** Seed the demo into an empty store. @returns the tenant @throws PlainError when the store is not empty */
export async function seedEmpty(store: OpenStore): Promise<string> {
  if ((await listTenants(store)).length > 0)
    throw new PlainError('The store is not empty: the demo only goes into an empty one.')
  const { seedDemo } = await import('@/lib/server/demo/seed-demo')
  const { tenant } = await seedDemo(store)
  await keepMark(store.db, SEEDED)
  return tenant
}

/** Seed the demo unless the store holds it already. @throws PlainError when the store holds a real record, or a demo whose seeding was cut short */
export async function seedIfEmpty(store: OpenStore): Promise<void> {
  const tenants = await listTenants(store)
  if (tenants.some((one) => !one.isDemo))
    throw new PlainError('This store holds a real record: the demo needs a store of its own (UNDERWRAP_DATA).')
  if (tenants.length > 0) {
    if (!(await hasMark(store.db, SEEDED)))
      throw new PlainError(
        `The demo in ${store.dataDir} was cut short while it was entered: remove that folder and start again.`,
      )
    return
  }
  process.stdout.write('Entering the demo\n')
  await seedEmpty(store)
  await store.readClock()
}

/** Who can sign in to the demo, one line each. */
export function showSignIns(): string[] {
  const width = Math.max(...DEMO_PEOPLE.map((one) => one.email.length))
  return [
    `Sign in as one of these, password ${DEMO_PASSWORD}`,
    ...DEMO_PEOPLE.map((one) => `  ${one.email.padEnd(width)}  ${one.name}, ${one.title}`),
  ]
}
