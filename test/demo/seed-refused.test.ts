import { afterAll, expect, test } from 'vitest'
import { seedDemo } from '@/lib/server/demo/seed-demo'
import { listTenants } from '@/lib/server/store/tenants'
import { openTestStore } from '../store/test-store'

const opened = openTestStore()
afterAll(async () => (await opened).remove())

test('the demo is refused by a store that holds a tenant, and leaves it as it was', { timeout: 120_000 }, async () => {
  const store = await opened
  await expect(seedDemo(store)).rejects.toThrow('empty store')
  expect((await listTenants(store)).map((one) => [one.slug, one.isDemo])).toEqual([['a', false]])
})
