import { rmSync } from 'node:fs'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { PersonId } from '@/lib/domain/facts/fact'
import { acceptInvitation } from '@/lib/server/auth/accept-invitation'
import { createAccount } from '@/lib/server/auth/create-account'
import { findInvitation } from '@/lib/server/auth/find-invitation'
import { isSetUp } from '@/lib/server/auth/is-set-up'
import { loadActorOfAccount } from '@/lib/server/auth/load-actor'
import { setUp } from '@/lib/server/auth/set-up'
import { makeSetupCode } from '@/lib/server/auth/setup-code'
import { endRole } from '@/lib/server/commands/end-role'
import { grantRole } from '@/lib/server/commands/grant-role'
import { invitePerson } from '@/lib/server/commands/invite-person'
import { openProject } from '@/lib/server/commands/open-project'
import { registerPerson } from '@/lib/server/commands/register-person'
import { provideStore, type Runtime } from '@/lib/server/runtime/runtime'
import { type OpenStore, openStore } from '@/lib/server/store/open-store'
import { makeDataFolder } from '@/test/store/test-store'

const FORM = {
  organisation: 'Plumbline-and-Thrice Inspection',
  utcOffset: '+01:00',
  name: 'Ada Minton',
  personId: 'AD',
  email: 'Ada@Example.Test',
  password: 'twelve or more of them',
}
const signIn = (runtime: Runtime, email: string, password: string) =>
  runtime.auth.api.signInEmail({ body: { email, password } })

describe('accounts', () => {
  let store: OpenStore
  let runtime: Runtime
  let userId: string
  let tenant: string
  const administrator = async () => {
    const actor = await loadActorOfAccount(store, userId, null)
    if (!actor) throw new Error('no administrator')
    return actor
  }

  beforeAll(async () => {
    store = await openStore({ dataDir: makeDataFolder(), now: () => '2026-05-12T09:00:00+01:00' })
    runtime = await provideStore(store)
  })
  afterAll(async () => {
    await store.close()
    rmSync(store.dataDir, { recursive: true, force: true })
  })

  test('an empty store takes the first administrator against the newest code, once', async () => {
    expect(await isSetUp()).toBe(false)
    const old = await makeSetupCode(store.db.queries)
    const code = await makeSetupCode(store.db.queries)
    expect(code).toMatch(/^([2-9A-HJKMNP-Z]{4}-){3}[2-9A-HJKMNP-Z]{4}$/)
    expect(await setUp({ ...FORM, code: old })).toEqual({ ok: false, error: { code: 'code-wrong' } })
    expect(await setUp({ ...FORM, code, password: 'short' })).toMatchObject({
      ok: false,
      error: { code: 'invalid', fields: { password: [expect.any(String)] } },
    })
    const made = await setUp({ ...FORM, code: code?.toLowerCase().replaceAll('-', ' ') })
    if (!made.ok) throw new Error(made.error.code)
    ;({ userId, tenant } = made.value)
    expect(await isSetUp()).toBe(true)
    expect(await setUp({ ...FORM, code, email: 'b@example.test' })).toEqual({
      ok: false,
      error: { code: 'set-up-already' },
    })
    expect(await makeSetupCode(store.db.queries)).toBeNull()
    expect((await administrator()).rolesOn('any', '2026-05-12')).toEqual(['administrator'])
  })

  test('codes are tried ten times in a quarter of an hour, no more', async () => {
    const outcomes = []
    for (let tries = 0; tries < 10; tries += 1) outcomes.push(await setUp({ ...FORM, code: 'AAAA-AAAA-AAAA-AAAA' }))
    expect(outcomes.at(-1)).toMatchObject({ ok: false, error: { code: 'too-many-tries' } })
  })

  test('nobody signs up, and a session is made for the right password alone', async () => {
    await expect(
      runtime.auth.api.signUpEmail({
        body: { name: 'M', email: 'm@example.test', password: 'twelve or more of them' },
      }),
    ).rejects.toThrow()
    await expect(signIn(runtime, FORM.email, 'not the password')).rejects.toMatchObject({ statusCode: 401 })
    const signed = await signIn(runtime, FORM.email, FORM.password)
    expect(signed.user.email).toBe('ada@example.test')
  })

  test('the sixth wrong password is not looked at, nor is the right one then', async () => {
    for (let tries = 0; tries < 5; tries += 1)
      await expect(signIn(runtime, FORM.email, 'not the password')).rejects.toMatchObject({ statusCode: 401 })
    await expect(signIn(runtime, FORM.email, FORM.password)).rejects.toMatchObject({ statusCode: 429 })
  })

  test('a cookie is for this site alone and out of reach of scripts', async () => {
    await createAccount(store.db.queries, {
      name: 'Q',
      email: 'q@example.test',
      password: FORM.password,
      tenant,
      personId: PersonId.parse('QQ'),
    })
    const answer = await runtime.auth.api.signInEmail({
      body: { email: 'q@example.test', password: FORM.password },
      asResponse: true,
    })
    const cookie = answer.headers.get('set-cookie') ?? ''
    expect(cookie).toMatch(/^underwrap\.session_token=/)
    expect(cookie).toMatch(/HttpOnly/i)
    expect(cookie).toMatch(/SameSite=Lax/i)
    const session = await runtime.auth.api.getSession({ headers: new Headers({ cookie: cookie.split(';')[0] ?? '' }) })
    expect(session?.session.activeOrganizationId).toBe(tenant)
  })

  test('the administrator registers, grants and invites; the person sets the password', async () => {
    const admin = await administrator()
    const person = {
      stream: 'person:QI',
      body: { name: 'Tobias Wrenfield', party: 'inspection body', title: 'Inspector' },
    }
    expect((await registerPerson(admin, person)).ok).toBe(true)
    expect(await registerPerson(admin, person)).toMatchObject({ ok: false, error: { code: 'exists-already' } })
    expect(
      (
        await openProject(admin, {
          stream: 'project:P-1',
          body: { name: 'Dewatering', site: 'Shaft 2', utcOffset: '+01:00', owner: 'Quellmark' },
        })
      ).ok,
    ).toBe(true)
    const grant = await grantRole(admin, {
      stream: 'project:P-1',
      body: { person: 'QI', role: 'inspector', approve: true, from: '2026-05-01' },
    })
    expect(grant.ok).toBe(true)
    const invited = await invitePerson(admin, { person: 'QI', email: 'tobias@example.test' })
    if (!invited.ok) throw new Error(invited.error.code)
    const token = invited.value.path.split('/').at(-1) ?? ''
    expect(await findInvitation(token)).toEqual({
      name: 'Tobias Wrenfield',
      email: 'tobias@example.test',
      organisation: FORM.organisation,
    })
    expect(await acceptInvitation({ token, password: 'short' })).toMatchObject({
      ok: false,
      error: { code: 'invalid' },
    })
    const [one, two] = await Promise.all([
      acceptInvitation({ token, password: FORM.password }),
      acceptInvitation({ token, password: FORM.password }),
    ])
    expect([one.ok, two.ok].sort()).toEqual([false, true])
    expect(await findInvitation(token)).toBeNull()
    expect(await acceptInvitation({ token, password: FORM.password })).toEqual({
      ok: false,
      error: { code: 'invitation-over' },
    })
    const { user } = await signIn(runtime, 'tobias@example.test', FORM.password)
    const actor = await loadActorOfAccount(store, user.id, tenant)
    expect(actor?.rolesOn('project:P-1' as never, '2026-05-12')).toEqual(['inspector'])
    expect(actor?.rolesOn('project:P-1' as never, '2026-04-30')).toEqual([])
    expect(actor?.approvesOn('project:P-1' as never, '2026-05-12', 'inspector')).toBe(true)
    expect(await invitePerson(admin, { person: 'QI', email: 'again@example.test' })).toMatchObject({
      ok: false,
      error: { code: 'not-decided', why: 'person-has-account' },
    })
    expect(await invitePerson(admin, { person: 'NOBODY', email: 'n@example.test' })).toMatchObject({
      ok: false,
      error: { code: 'not-found' },
    })
  })

  test('nobody grants or ends a role of their own', async () => {
    const admin = await administrator()
    expect(
      await grantRole(admin, { stream: 'project:P-1', body: { person: 'AD', role: 'inspector', from: '2026-05-01' } }),
    ).toMatchObject({ ok: false, error: { code: 'not-own-role' } })
    const own = admin.grants[0]?.fact
    expect(
      await endRole(admin, {
        stream: 'project:office',
        body: { grant: own, on: '2026-05-12', reason: 'leaving the post' },
      }),
    ).toMatchObject({ ok: false, error: { code: 'not-own-role' } })
  })
})
