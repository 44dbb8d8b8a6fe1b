import { rmSync, statSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { PersonId } from '@/lib/domain/facts/fact'
import { createAccount } from '@/lib/server/auth/create-account'
import { loadSecret } from '@/lib/server/auth/load-secret'
import { openWorld, PASSWORD, type World } from '@/test/commands/world'
import { makeDataFolder } from '@/test/store/test-store'

describe('what an account stands on', () => {
  let world: World
  beforeAll(async () => {
    world = await openWorld()
  })
  afterAll(() => world.store.remove())

  test('the session secret is made once and its owner’s alone', async () => {
    const folder = makeDataFolder()
    const secret = await loadSecret(folder)
    expect(secret.length).toBeGreaterThanOrEqual(48)
    expect(await loadSecret(folder)).toBe(secret)
    expect(statSync(join(folder, 'session-secret')).mode & 0o777).toBe(0o600)
    writeFileSync(join(folder, 'session-secret'), 'short')
    await expect(loadSecret(folder)).rejects.toThrow(/too short/)
    rmSync(folder, { recursive: true })
  })

  test('an address or a person has one account', async () => {
    const more = { name: 'N', password: PASSWORD, tenant: world.store.tenant }
    expect(
      await createAccount(world.store.db.queries, {
        ...more,
        email: 'qi@EXAMPLE.test',
        personId: PersonId.parse('N1'),
      }),
    ).toEqual({ ok: false, error: { code: 'email-taken' } })
    expect(
      await createAccount(world.store.db.queries, {
        ...more,
        email: 'n1@example.test',
        personId: PersonId.parse('QI'),
      }),
    ).toEqual({ ok: false, error: { code: 'person-has-account' } })
    expect(
      await createAccount(world.store.db.queries, { ...more, email: 'no address', personId: PersonId.parse('N1') }),
    ).toMatchObject({ ok: false, error: { code: 'invalid' } })
    await expect(
      createAccount(world.store.db.queries, {
        ...more,
        tenant: 'none',
        email: 'n1@example.test',
        personId: PersonId.parse('N1'),
      }),
    ).rejects.toThrow(/tenant/)
  })
})
