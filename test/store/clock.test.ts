import { rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { instantOf } from '@/lib/domain/time'
import { clockOf, DEMO_STARTS_AT, markAsTestStore, realNow } from '@/lib/server/store/clock'
import { makeTenant } from '@/lib/server/store/tenants'
import { makeDataFolder, openTestStore, type TestStore } from './test-store'

describe('clock of a store', () => {
  let store: TestStore
  let folder: string
  beforeAll(async () => {
    store = await openTestStore()
    folder = makeDataFolder()
  })
  afterAll(async () => {
    await store.remove()
    rmSync(folder, { recursive: true, force: true })
  })

  test('a real store goes by real time', async () => {
    const now = await clockOf(store.db)
    expect(Math.abs(instantOf(now()) - Date.now())).toBeLessThan(2000)
    expect(Math.abs(instantOf(realNow()) - Date.now())).toBeLessThan(2000)
  })

  test('a test clock is refused on a store that was not made for tests, and such a store cannot become one', async () => {
    const file = join(folder, 'now')
    writeFileSync(file, '2026-05-12T09:00:00+01:00\n')
    await expect(clockOf(store.db, file)).rejects.toThrow('refused')
    await expect(markAsTestStore(store.db)).rejects.toThrow('cannot become')
  })

  test('a demo starts at its morning when first served and runs on across openings', async () => {
    await makeTenant(store, { id: 'demo', slug: 'demo', name: 'Demo', isDemo: true })
    const first = await clockOf(store.db)
    const startedMs = instantOf(DEMO_STARTS_AT)
    expect(instantOf(first()) - startedMs).toBeLessThan(5000)
    expect(first().endsWith('+01:00')).toBe(true)
    await store.db.pool.query(
      `update store_marks set value = to_jsonb((now() - interval '2 hours')::text) where key = 'demo-first-served'`,
    )
    const later = await clockOf(store.db)
    const ranMinutes = (instantOf(later()) - startedMs) / 60_000
    expect(ranMinutes).toBeGreaterThan(119)
    expect(ranMinutes).toBeLessThan(121)
  })

  test('a store made for tests shows the moment that its file says, and moves with it', async () => {
    const empty = await openTestStore()
    try {
      await empty.db.pool.query('delete from tenants')
      await markAsTestStore(empty.db)
      const file = join(folder, 'moves')
      writeFileSync(file, '2026-05-12T09:00:00+01:00')
      const now = await clockOf(empty.db, file)
      expect(now()).toBe('2026-05-12T09:00:00+01:00')
      writeFileSync(file, '2026-05-12T09:22:00+01:00\n')
      expect(now()).toBe('2026-05-12T09:22:00+01:00')
      writeFileSync(file, 'noon')
      expect(() => now()).toThrow()
    } finally {
      await empty.remove()
    }
  })
})
