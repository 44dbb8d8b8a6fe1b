import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import type { StreamId } from '@/lib/domain/facts/fact'
import { ROLES } from '@/lib/domain/roles'
import { type Actor, actorOf } from '@/lib/server/auth/actor'
import { openDesk } from '@/lib/server/commands/open-desk'
import type { Tried } from './authorisation-row'
import { ACTION_ROWS, OPEN, ROUTE_ROWS } from './authorisation-table'
import { builtActions, builtPaths, filesWithInnerActions, isBuilt, writtenActions, writtenPaths } from './entries'
import { OPEN_PAGES, PAGE_ROWS } from './page-rows'
import { openPreparedWorld } from './prepared-world'

const rows = [...ACTION_ROWS, ...ROUTE_ROWS]
const known = new Set([...rows.map((row) => row.name), ...Object.keys(OPEN)])
const knownPages = new Set([...PAGE_ROWS.map((row) => row.path), ...Object.keys(OPEN_PAGES)])
const OF_TENANT_A = /Person |"R-1"|MDW-250|FP-1|N-raised|HD-1|Dewatering|Wet lay-up|short plan/
const REFUSED_FOR_ROLE = ['not-allowed', 'not-own-role', 'meaning-not-for-role']

/** Every role at once in the project of tenant A. */
function allRoles(actor: Actor): Actor['grants'] {
  return ROLES.flatMap((role) => actor.grants.map((grant) => ({ ...grant, role })))
}

describe('every action, route and page has a row', () => {
  test('as written', () => {
    expect([...writtenActions(), ...writtenPaths('route')].filter((name) => !known.has(name))).toEqual([])
    expect(
      rows.filter((row) => ![...writtenActions(), ...writtenPaths('route')].includes(row.name)).map((row) => row.name),
    ).toEqual([])
    expect(writtenPaths('page').filter((path) => !knownPages.has(path))).toEqual([])
    expect(PAGE_ROWS.filter((row) => !writtenPaths('page').includes(row.path)).map((row) => row.path)).toEqual([])
    expect(filesWithInnerActions()).toEqual(['app/(work)/layout.tsx'])
  })

  test('as built', ({ skip }) => {
    if (!isBuilt()) skip('the built app')
    const found = [
      ...builtActions().filter((name) => !name.startsWith('inside')),
      ...builtPaths('route').filter((path) => path.startsWith('/api/')),
    ]
    expect(found.length).toBeGreaterThan(ROUTE_ROWS.length)
    expect(builtActions().filter((name) => name.startsWith('inside'))).toEqual(['inside app/(work)/layout.tsx'])
    expect(found.filter((name) => !known.has(name))).toEqual([])
    expect(builtPaths('page').filter((path) => !knownPages.has(path) && !path.startsWith('/_'))).toEqual([])
  })
})

describe('who is refused', () => {
  let world: Tried
  beforeAll(async () => {
    const prepared = await openPreparedWorld()
    world = {
      ...prepared,
      heads: async () => (await openDesk(await prepared.of('QI'))).headsOf(['repair:R-1' as StreamId]),
    }
  })
  afterAll(() => world.store.remove())

  // Before anything else: a stranger's own drafts of the same name must not be mistaken for tenant A's.
  test.each(PAGE_ROWS)('$path: a reader of another tenant sees nothing of this one', async ({ load }) => {
    const readingOf = async (actor: Actor) => {
      const desk = await openDesk(actor)
      return { desk, actor, roles: actor.rolesOn('any', desk.today(null)) }
    }
    expect(JSON.stringify(await load(await readingOf(world.foreign))) ?? '').not.toMatch(OF_TENANT_A)
    const own = actorOf({ ...(await world.of('QI')), grants: allRoles(await world.of('QI')) })
    expect(JSON.stringify(await load(await readingOf(own)))).toMatch(OF_TENANT_A)
  })

  test.each(rows)('$name: a caller of another tenant finds nothing and changes nothing', async ({ run, input }) => {
    const before = await world.count()
    const outcome = await run(world.foreign, await input(world, world.foreign))
    expect(await world.count()).toBe(before)
    if (!outcome.ok) expect(['not-found', 'password-wrong']).toContain(outcome.error.code)
    else expect(JSON.stringify(outcome.value)).not.toMatch(/Person |R-1"|MDW-250/)
  })

  test.each(rows)('$name: a role without the right is refused and changes nothing', async ({ run, input, may }) => {
    const lacking = ROLES.filter((role) => !may.includes(role))
    for (const role of lacking) {
      const actor = await world.as(role)
      const asked = await input(world, actor)
      const before = await world.count()
      const outcome = await run(actor, asked)
      expect
        .soft({ role, code: outcome.ok ? 'done' : outcome.error.code })
        .toEqual({ role, code: expect.stringMatching(new RegExp(`^(${REFUSED_FOR_ROLE.join('|')}|not-own-entry)$`)) })
      expect(await world.count()).toBe(before)
    }
  })

  test('a right in another project, or on another day, is none here', async () => {
    const inspector = await world.as('inspector')
    const elsewhere = inspector.grants.map((grant) => ({ ...grant, project: 'project:P-2' as StreamId }))
    const ended = inspector.grants.map((grant) => ({ ...grant, to: '2026-05-11' }))
    const row = rows.find((one) => one.name === 'judgePhotoAction')
    for (const grants of [elsewhere, ended, []]) {
      const outcome = await row?.run(actorOf({ ...inspector, grants }), await row.input(world, inspector))
      expect(outcome).toMatchObject({ ok: false, error: { code: 'not-allowed', needs: ['inspector'] } })
    }
  })

  test.each(rows)('$name: a role with the right is not refused for its role', async ({ run, input, may }) => {
    for (const role of may) {
      const actor = await world.as(role)
      const outcome = await run(actor, await input(world, actor))
      expect
        .soft({ role, code: outcome.ok ? 'done' : outcome.error.code })
        .not.toEqual({ role, code: expect.stringMatching(new RegExp(`^(${REFUSED_FOR_ROLE.join('|')}|invalid)$`)) })
    }
  })
})
