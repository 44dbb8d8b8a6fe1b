import 'next/dist/server/node-environment-baseline'
import { createHash } from 'node:crypto'
import sharp from 'sharp'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { createFetchExchange } from '@/lib/capture/outbox/fetch-exchange'
import type { StreamId } from '@/lib/domain/facts/fact'
import { ofKind } from '@/lib/domain/fold/order-facts'
import { loadStreams } from '@/lib/server/store/load-stream'
import { NOW, openWorld, type World } from '@/test/commands/world'
import { openedFact } from '@/test/commands/world-facts'
import { drawScene } from '@/test/photo/drawn-photo'
import { openLossyProxy } from './lossy-proxy'
import { outboxOf, photoAt, remarkAt } from './outbox-for-tests'
import { fetchAs, serveOutbox } from './serve-outbox'

const FACTS = 200
const PHOTOS = 60
const REPAIRS = ['R-1', 'R-2', 'R-3']

/** Two of the pictures are noise, which takes more than one piece. */
function picture(no: number): Promise<Buffer> {
  if (no > 1)
    return drawScene(160 + no, 120)
      .jpeg()
      .toBuffer()
  const noise = { type: 'gaussian' as const, mean: 128, sigma: 60 }
  return sharp({ create: { width: 1100 + no, height: 900, channels: 3, background: '#888888', noise } })
    .jpeg({ quality: 96 })
    .toBuffer()
}

describe('over a network that loses requests, uploads and replies', () => {
  let world: World
  let server: Awaited<ReturnType<typeof serveOutbox>>
  beforeAll(async () => {
    world = await openWorld()
    await world.put([openedFact('R-2'), openedFact('R-3')])
    server = await serveOutbox()
  })
  afterAll(async () => {
    await server.close()
    await world.store.remove()
  })

  test(`${FACTS} facts and ${PHOTOS} photos arrive exactly once, in the order of their streams`, async () => {
    const proxy = await openLossyProxy(server.url, 20_260_512)
    const outbox = outboxOf('T1', { isOnline: () => false })
    const before = await world.count()
    const sent: { id: string; stream: string }[] = []
    const digests = new Set<string>()
    for (let no = 0; no < FACTS; no++) {
      const repair = REPAIRS[no % REPAIRS.length] ?? 'R-1'
      if (no < PHOTOS) {
        const bytes = await picture(no)
        digests.add(createHash('sha256').update(bytes).digest('hex'))
        expect((await outbox.capture(photoAt(repair, `photo ${no}`, bytes))).ok).toBe(true)
      }
      expect((await outbox.capture(remarkAt(repair, `fact ${no}`))).ok).toBe(true)
    }
    for (const { id, input } of await outbox.entries()) sent.push({ id, stream: input.stream })
    expect(digests.size).toBe(PHOTOS)

    const exchange = createFetchExchange(await fetchAs('T1'), proxy.url)
    for (let round = 0; (await outbox.status()).open > 0 && round < 3000; round++) {
      const outcome = await outbox.send(exchange)
      expect(['sent', 'no-network']).toContain(outcome.kind)
    }
    await proxy.close()
    expect(await outbox.status()).toMatchObject({ open: 0, refused: 0, photos: 0, last: { kind: 'sent' } })
    expect(Math.min(proxy.losses.dropped, proxy.losses.cut, proxy.losses.repliesLost)).toBeGreaterThan(3)

    const streams = REPAIRS.map((one) => `repair:${one}` as StreamId)
    const { facts } = await loadStreams(world.store, world.store.tenant, streams)
    expect(await world.count()).toBe(before + FACTS + PHOTOS)
    for (const stream of streams) {
      const arrived = facts.filter((one) => one.stream === stream && one.kind !== 'repair-opened').map((one) => one.id)
      const captured = sent.filter((one) => one.stream === stream).map((one) => one.id)
      expect([...arrived].sort()).toEqual([...captured].sort())
      expect(arrived).toEqual(captured)
    }
    const attached = ofKind(facts, 'photo-attached').map((one) => one.body.photo.sha256)
    expect(new Set(attached)).toEqual(digests)
    for (const sha256 of digests) {
      const kept = await world.store.photos.read(sha256)
      expect(kept && createHash('sha256').update(kept).digest('hex')).toBe(sha256)
    }
    expect(facts.filter((one) => one.kind === 'recorded').every((one) => one.enteredAt === NOW)).toBe(true)
  }, 120_000)
})
