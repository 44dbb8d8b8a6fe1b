import 'next/dist/server/node-environment-baseline'
import { v7 } from 'uuid'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { createFetchExchange } from '@/lib/capture/outbox/fetch-exchange'
import { done } from '@/lib/domain/result'
import { attachPhoto } from '@/lib/server/commands/attach-photo'
import { recordPoint } from '@/lib/server/commands/record-point'
import { NOW, openWorld, type World } from '@/test/commands/world'
import { drawScene } from '@/test/photo/drawn-photo'
import { outboxOf, photoAt, remarkAt } from './outbox-for-tests'
import { fetchAs, serveOutbox } from './serve-outbox'

// A form sends to the server first. When the reply is lost it cannot know whether the server has the fact, and keeps it in the outbox under the same id.
let world: World
let server: Awaited<ReturnType<typeof serveOutbox>>
const device = { id: 'phone-1', clockOffsetMs: null }
const exchange = async () => createFetchExchange(await fetchAs('T1'), server.url, () => Date.parse(NOW))

beforeAll(async () => {
  world = await openWorld()
  server = await serveOutbox()
})
afterAll(async () => {
  await server.close()
  await world.store.remove()
})

test('a record whose reply was lost is received once', async () => {
  const [id, outbox, remark] = [v7(), outboxOf('T1'), remarkAt('R-1', 'reply lost')]
  expect((await recordPoint(await world.of('T1'), { ...remark.input, id, device })).ok).toBe(true)
  const before = await world.count()
  expect(await outbox.capture({ ...remark, id, device })).toMatchObject({ ok: true, value: { id } })
  expect(await outbox.send(await exchange())).toEqual({ kind: 'sent' })
  expect(await outbox.entries()).toMatchObject([{ id, state: 'sent' }])
  expect(await world.count()).toBe(before)
})

test('a photo whose reply was lost is received once', async () => {
  const bytes = await drawScene(200, 150).jpeg().toBuffer()
  const [id, outbox, photo] = [v7(), outboxOf('T1'), photoAt('R-1', 'board', bytes)]
  const attached = await attachPhoto(await world.of('T1'), { ...photo.input, id, device }, async () => done(bytes))
  expect(attached).toMatchObject({ ok: true })
  const before = await world.count()
  await outbox.capture({ ...photo, id, device })
  expect(await outbox.send(await exchange())).toEqual({ kind: 'sent' })
  expect(await outbox.entries()).toMatchObject([{ id, state: 'sent' }])
  expect(await world.count()).toBe(before)
})

test('a record that never arrived is received from the outbox, under the id that the form gave it', async () => {
  const [id, outbox] = [v7(), outboxOf('T1')]
  const before = await world.count()
  await outbox.capture({ ...remarkAt('R-1', 'never arrived'), id, device })
  await outbox.send(await exchange())
  expect(await outbox.entries()).toMatchObject([{ id, state: 'sent' }])
  expect(await world.count()).toBe(before + 1)
})
