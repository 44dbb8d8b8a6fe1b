import { v7 } from 'uuid'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { parseProjectPack } from '@/lib/domain/capture/project-pack'
import type { StreamId } from '@/lib/domain/facts/fact'
import { type NumberBlock, numberAt } from '@/lib/domain/numbers/number-blocks'
import { allotNumbers } from '@/lib/server/commands/allot-numbers'
import { listNumberGrounds } from '@/lib/server/commands/list-number-grounds'
import { openProjectPack } from '@/lib/server/commands/open-project-pack'
import { openRepair } from '@/lib/server/commands/open-repair'
import { receiveEntries } from '@/lib/server/commands/receive-entries'
import { packIn } from './pack-in'
import { NOW, openWorld, type World } from './world'
import { openedFact } from './world-facts'

const project = 'project:P-1' as StreamId
let world: World
beforeAll(async () => {
  world = await openWorld()
})
afterAll(() => world.store.remove())

const ask = (device: string, more: object = {}) => ({
  id: v7(),
  device,
  project,
  prefix: 'R-',
  digits: 4,
  count: 3,
  ...more,
})
const bodyOf = (number: string) => openedFact(number).body
const openOn = async (device: string, number: string) =>
  openRepair(await world.of('L1'), {
    stream: `repair:${number}`,
    body: bodyOf(number),
    device: { id: device, clockOffsetMs: 0 },
  })

async function allotted(device: string, more: object = {}): Promise<NumberBlock> {
  const block = await allotNumbers(await world.of('L1'), ask(device, more))
  if (!block.ok) throw new Error(block.error.code)
  return block.value
}

test('devices that ask at one moment get blocks that share no number, behind every repair there is', async () => {
  expect(await openOn('server', 'R-0020')).toMatchObject({ ok: true })
  const devices = ['d-1', 'd-2', 'd-3', 'd-4', 'd-5', 'd-6']
  const blocks = await Promise.all(devices.map((one) => allotted(one)))
  const numbers = blocks.flatMap((one) => [0, 1, 2].map((at) => numberAt(one, one.from + at)))
  expect(new Set(numbers).size).toBe(18)
  expect(numbers.toSorted()).toEqual(Array.from({ length: 18 }, (_, at) => `R-${String(21 + at).padStart(4, '0')}`))
  expect(blocks.map((one) => one.device)).toEqual(devices.map((one) => `device:${one}`))
})

test('asked again with the same id it is the same block; the id of another is refused', async () => {
  const id = v7()
  const first = await allotted('d-7', { id })
  expect(await allotted('d-7', { id })).toEqual(first)
  expect(await allotNumbers(await world.of('QI'), ask('d-7', { id }))).toMatchObject({ error: { code: 'id-taken' } })
  expect(await allotNumbers(await world.of('L1'), ask('d-8', { id }))).toMatchObject({ error: { code: 'id-taken' } })
})

test('a number of a block opens on its own device alone, however it is written, and once', async () => {
  const block = await allotted('d-9')
  const number = numberAt(block, block.from)
  const elsewhere = { code: 'number-allotted-elsewhere', from: number, to: numberAt(block, block.to) }
  for (const [device, name] of [
    ['d-1', number],
    ['server', number],
    ['d-1', number.toLowerCase()],
    ['d-1', `R-00${block.from}`],
    ['d-1', `R-${block.from}`],
  ] as const)
    expect(await openOn(device, name)).toEqual({ ok: false, error: { ...elsewhere, number: name } })
  expect(await openRepair(await world.of('L1'), { stream: `repair:${number}`, body: bodyOf(number) })).toMatchObject({
    error: elsewhere,
  })
  expect(await openOn('d-9', number)).toMatchObject({ ok: true })
  expect(await openOn('d-9', number)).toMatchObject({ error: { code: 'exists-already' } })
})

test('an opening and an allotment that meet never give one number twice', async () => {
  for (let round = 0; round < 12; round += 1) {
    const last = await allotted('d-10', { count: 1 })
    const wanted = numberAt(last, last.to + 1)
    const [block, opened] = await Promise.all([allotted('d-11', { count: 2 }), openOn('server', wanted)])
    // whoever came first: the number was opened and the block lies behind it, or it lies in the block and was refused, or the pack says that it is borne
    const isInBlock = block.from <= last.to + 1 && block.to >= last.to + 1
    const pack = await packOf('d-11')
    if (opened.ok && isInBlock) expect(pack.taken).toContain(wanted)
    else if (opened.ok) expect(block.from).toBeGreaterThan(last.to + 1)
    else expect([opened.error.code, isInBlock]).toEqual(['number-allotted-elsewhere', true])
  }
})

async function packOf(device: string, person = 'L1') {
  return packIn(await openProjectPack(await world.of(person), { project, device }), parseProjectPack)
}

test('a pack holds what a repair is opened on, and the blocks of its device alone', async () => {
  const block = await allotted('d-12')
  await openOn('d-12', numberAt(block, block.from))
  const pack = await packOf('d-12')
  expect([pack.blocks, pack.taken]).toEqual([[block], [numberAt(block, block.from)]])
  const kinds = new Set([...pack.facts, ...pack.stores].map((one) => one.kind))
  for (const kind of ['project-opened', 'specification-issued', 'plan-issued', 'person-registered', 'batch-received'])
    expect(kinds).toContain(kind)
  const grounds = await listNumberGrounds(await world.of('L1'), { device: 'd-12' })
  expect(grounds).toMatchObject({
    value: { projects: [{ project, left: 2 }], prefixes: [{ prefix: 'R-', digits: 4 }] },
  })
})

test('an opening that was made without a network is received once, however often it is sent', async () => {
  const actor = await world.of('L1')
  const block = await allotted('d-13')
  const number = numberAt(block, block.to)
  const entry = (device: string, id = v7()) => ({
    id,
    command: 'open-repair',
    photos: [],
    madeOffline: true,
    input: {
      stream: `repair:${number}`,
      body: bodyOf(number),
      observedAt: NOW,
      enteredAt: NOW,
      device: { id: device, clockOffsetMs: null },
    },
  })
  const send = (...entries: object[]) =>
    receiveEntries(actor, { v: 1, tenant: actor.tenant, person: actor.person, entries })
  expect(await send(entry('d-14'))).toMatchObject({
    value: [{ kind: 'refused', refusal: { code: 'number-allotted-elsewhere' } }],
  })
  const own = entry('d-13')
  const first = await send(own)
  expect(first).toMatchObject({ value: [{ kind: 'received', receipt: { position: 1 } }] })
  expect(await send(own, own)).toEqual({
    ok: true,
    value: [...(first.ok ? first.value : []), ...(first.ok ? first.value : [])],
  })
})

test('what cannot be allotted is refused', async () => {
  const actor = await world.of('L1')
  for (const more of [
    { prefix: 'R-1' },
    { prefix: '' },
    { count: 0 },
    { count: 51 },
    { device: 'no device' },
    { project: 'repair:R-1' },
  ])
    expect(await allotNumbers(actor, ask('d-1', more)), JSON.stringify(more)).toMatchObject({
      error: { code: 'invalid' },
    })
  expect(await allotNumbers(actor, ask('d-1', { project: 'project:NONE' }))).toMatchObject({
    error: { code: 'not-found' },
  })
  expect(await allotNumbers(await world.of('T1'), ask('d-1'))).toMatchObject({ error: { code: 'not-allowed' } })
  await openOn('server', 'Z-999999')
  expect(await allotNumbers(actor, ask('d-1', { prefix: 'Z-' }))).toMatchObject({
    error: { code: 'not-decided', why: 'numbers-exhausted' },
  })
})
