import { afterAll, beforeAll, expect, test } from 'vitest'
import { stateOnSite } from '@/lib/capture/site/site-state'
import { parseSitePack } from '@/lib/domain/capture/site-pack'
import type { StreamId } from '@/lib/domain/facts/fact'
import { openDesk } from '@/lib/server/commands/open-desk'
import { openSitePack } from '@/lib/server/commands/open-site-pack'
import { loadStream } from '@/lib/server/store/load-stream'
import { openPreparedWorld, type Prepared } from '@/test/auth/prepared-world'
import { packIn } from './pack-in'

const REPAIR = 'repair:R-1' as StreamId
let world: Prepared
beforeAll(async () => {
  world = await openPreparedWorld()
})
afterAll(() => world.store.remove())

async function packOf(person: string) {
  return packIn(await openSitePack(await world.of(person), { repair: REPAIR }), parseSitePack)
}

test('it holds the exact facts of the repair and of what it cites, with receipts and digests', async () => {
  const pack = await packOf('QI')
  const own = await loadStream(world.store, world.store.tenant, REPAIR)
  expect(pack.facts.filter((fact) => fact.stream === REPAIR)).toEqual(own.facts)
  for (const { id } of own.facts) {
    expect(pack.receipts[id]).toEqual(own.receipts.get(id))
    expect(pack.digests[id]).toBe(own.sha256Of.get(id))
  }
  const kinds = new Set([...pack.facts, ...pack.stores].map((fact) => fact.stream.split(':')[0]))
  for (const kind of ['repair', 'specification', 'plan', 'project', 'person', 'batch', 'instrument'])
    expect(kinds).toContain(kind)
  expect(pack.facts.filter((fact) => fact.stream.startsWith('repair:') && fact.stream !== REPAIR)).toEqual([])
  const ids = [...pack.facts, ...pack.stores].map((fact) => fact.id)
  expect(new Set(ids).size).toBe(ids.length)
  expect(pack).toMatchObject({ number: 'R-1', person: 'QI', roles: ['inspector'] })
})

test('a device folds it to the state that the server has', async () => {
  const pack = await packOf('QI')
  const desk = await openDesk(await world.of('QI'))
  const there = await desk.stateOf(REPAIR)
  const { state } = stateOnSite(pack, [], Date.parse(desk.now(null)))
  const plainly = (value: unknown) => JSON.parse(JSON.stringify(value))
  expect(plainly(state.points)).toEqual(plainly(there?.points))
  expect(plainly(state.missing)).toEqual(plainly(there?.missing))
})

test('what is no repair, or not there, is refused', async () => {
  const actor = await world.of('QI')
  expect(await openSitePack(actor, { repair: 'batch:FP-1' })).toMatchObject({ error: { code: 'invalid' } })
  expect(await openSitePack(actor, { repair: 'repair:R-none' })).toMatchObject({ error: { code: 'not-found' } })
  expect(await openSitePack(world.foreign, { repair: REPAIR })).toMatchObject({ error: { code: 'not-found' } })
})
