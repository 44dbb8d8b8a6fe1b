import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { deviceTitle } from '@/lib/capture/outbox/device-title'
import { createMemoryOutboxStore } from '@/lib/capture/outbox/memory-outbox-store'
import { noteDevice } from '@/lib/capture/outbox/note-device'
import type { OutboxExchange } from '@/lib/capture/outbox/outbox-exchange'
import type { OutboxStore } from '@/lib/capture/outbox/outbox-store'
import type { StreamId } from '@/lib/domain/facts/fact'
import { clockErrors } from '@/lib/domain/fold/clock-errors'
import { type Moment, momentOf } from '@/lib/domain/time'
import { receiveEntries } from '@/lib/server/commands/receive-entries'
import { loadStream } from '@/lib/server/store/load-stream'
import { NOW, openWorld, type World } from '@/test/commands/world'
import { openedFact } from '@/test/commands/world-facts'
import { outboxOf, remarkAt } from './outbox-for-tests'

const START_MS = Date.parse(NOW)
let world: World
beforeAll(async () => {
  world = await openWorld()
  await world.put([openedFact('R-1')])
})
afterAll(() => world.store.remove())

/** A device with a clock of its own, which contacts the real receiving of entries. */
function deviceOf(id: string, person = 'T1', store: OutboxStore = createMemoryOutboxStore()) {
  let [offMs, serverMs] = [0, START_MS]
  const nowMs = () => serverMs + offMs
  const outbox = outboxOf(person, { store, deviceId: id, nowMs })
  const exchange: OutboxExchange = {
    async send(owner, entries) {
      const received = await receiveEntries(await world.of(person), { v: 1, ...owner, entries })
      if (!received.ok) throw new Error(received.error.code)
      const serverNow: Moment = momentOf(serverMs, '+01:00')
      return { kind: 'answered', answers: received.value, sentMs: nowMs() + 450, gotMs: nowMs() + 550, serverNow }
    },
    standingOf: () => Promise.reject(new Error('no photo')),
    putPiece: () => Promise.reject(new Error('no photo')),
  }
  const now = () => momentOf(nowMs(), '+01:00')
  const contact = async (followsServer = false) => {
    await outbox.send(exchange)
    const added = await noteDevice({
      outbox,
      store,
      tenant: 'tenant-a',
      title: `Browser of ${id}`,
      now: now(),
      followsServer,
    })
    await outbox.send(exchange)
    return added
  }
  return {
    outbox,
    contact,
    now,
    setClock: (ms: number) => {
      offMs = ms
    },
    pass: (ms: number) => {
      serverMs += ms
    },
    facts: async () => (await loadStream(world.store, 'tenant-a', `device:${id}` as StreamId)).facts,
  }
}

describe('what a device says of itself', () => {
  test('it registers itself at the first contact, once, under a name that a person recognises', async () => {
    const device = deviceOf('phone-11')
    expect(await device.contact()).toBe(1)
    expect(await device.contact()).toBe(0)
    expect((await device.facts()).map((one) => [one.kind, one.body])).toEqual([
      ['device-registered', { title: 'Browser of phone-11' }],
    ])
  })

  test('a second person on the same device does not register it again', async () => {
    const store = createMemoryOutboxStore()
    expect(await deviceOf('phone-12', 'T1', store).contact()).toBe(1)
    const second = deviceOf('phone-12', 'L1', store)
    expect(await second.contact()).toBe(0)
    expect((await second.facts()).length).toBe(1)
  })

  test('a clock that was set is told once for each drift, not at each contact', async () => {
    const device = deviceOf('phone-13')
    await device.contact()
    device.setClock(420_000)
    expect([await device.contact(), await device.contact(), await device.contact()]).toEqual([1, 0, 0])
    device.setClock(421_500)
    expect(await device.contact()).toBe(0)
    device.setClock(0)
    expect([await device.contact(), await device.contact()]).toEqual([1, 0])
    const checks = (await device.facts()).filter((one) => one.kind === 'clock-checked')
    expect(checks.map((one) => one.body)).toEqual([
      { offsetMs: 420_000, remark: expect.stringContaining('told before: 0 ms') },
      { offsetMs: 0, remark: expect.stringContaining('told before: 420000 ms') },
    ])
  })

  test('the fold then knows the error of what was captured between the contacts', async () => {
    const device = deviceOf('phone-14')
    await device.contact()
    device.setClock(-180_000)
    const kept = await device.outbox.capture(
      remarkAt('R-1', 'by a slow clock', { observedAt: device.now(), enteredAt: device.now() }),
    )
    if (!kept.ok) throw new Error(kept.error.code)
    device.pass(600_000)
    await device.contact()
    const own = (await loadStream(world.store, 'tenant-a', 'repair:R-1' as StreamId)).facts.filter(
      (one) => one.id === kept.value.id,
    )
    expect(own.map((one) => one.device)).toEqual([{ id: 'phone-14', clockOffsetMs: 0 }])
    expect(clockErrors([...own, ...(await device.facts())], own)).toEqual({ [kept.value.id]: -180_000 })
  })

  test('a device that follows the server’s clock tells nothing of it', async () => {
    const device = deviceOf('phone-15')
    device.setClock(420_000)
    expect(await device.contact(true)).toBe(1)
    expect((await device.facts()).map((one) => [one.kind, one.device.clockOffsetMs])).toEqual([
      ['device-registered', null],
    ])
  })

  test('what the server refuses of it is set aside with the reason, and not tried again and again', async () => {
    const taken = deviceOf('phone-16')
    await taken.contact()
    const same = deviceOf('phone-16', 'L1')
    await same.contact()
    expect((await same.outbox.entries()).map((one) => one.state)).toEqual(['refused'])
    expect(await same.contact()).toBe(0)
    expect(await same.outbox.entries()).toMatchObject([
      { state: 'set aside', settled: { reason: expect.stringContaining('exists-already') } },
    ])
    expect((await same.outbox.status()).open).toBe(0)
  })

  test.each([
    [
      'Mozilla/5.0 (Linux; Android 10; K) AppleWebKit/537.36 (KHTML, like Gecko) Chrome/140.0.0.0 Mobile Safari/537.36',
      'Chrome on an Android phone, 3f2a',
    ],
    [
      'Mozilla/5.0 (Linux; Android 13) AppleWebKit/537.36 (KHTML, like Gecko) Chrome/140.0.0.0 Safari/537.36',
      'Chrome on an Android tablet, 3f2a',
    ],
    [
      'Mozilla/5.0 (iPhone; CPU iPhone OS 18_0 like Mac OS X) AppleWebKit/605.1.15 (KHTML, like Gecko) Version/18.0 Mobile/15E148 Safari/604.1',
      'Safari on an iPhone, 3f2a',
    ],
    [
      'Mozilla/5.0 (Windows NT 10.0; Win64; x64; rv:140.0) Gecko/20100101 Firefox/140.0',
      'Firefox on a Windows computer, 3f2a',
    ],
    ['', 'A browser on an unknown device, 3f2a'],
  ])('%s', (userAgent, title) => {
    expect(deviceTitle(userAgent, 'device-019e5a6b-3f2a')).toBe(title)
  })
})
