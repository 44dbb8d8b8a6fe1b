import 'next/dist/server/node-environment-baseline'
import { createHash } from 'node:crypto'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { carryInFile } from '@/lib/capture/outbox/carry-in-file'
import { createFetchExchange } from '@/lib/capture/outbox/fetch-exchange'
import { createMemoryOutboxStore } from '@/lib/capture/outbox/memory-outbox-store'
import { writeOutboxFile } from '@/lib/capture/outbox/write-outbox-file'
import { FactId, type StreamId } from '@/lib/domain/facts/fact'
import { ofKind } from '@/lib/domain/fold/order-facts'
import { loadStream } from '@/lib/server/store/load-stream'
import { NOW, openWorld, type World } from '@/test/commands/world'
import { openedFact, PERMIT } from '@/test/commands/world-facts'
import { drawScene } from '@/test/photo/drawn-photo'
import { outboxOf, photoAt, remarkAt } from './outbox-for-tests'
import { fetchAs, serveOutbox } from './serve-outbox'

describe('a device and the server', () => {
  let world: World
  let server: Awaited<ReturnType<typeof serveOutbox>>
  const exchangeAs = async (person: string) =>
    createFetchExchange(await fetchAs(person), server.url, () => Date.parse(NOW))
  const factsOf = async (stream: string) =>
    (await loadStream(world.store, world.store.tenant, stream as StreamId)).facts
  beforeAll(async () => {
    world = await openWorld()
    await world.put([openedFact('R-2')])
    server = await serveOutbox()
  })
  afterAll(async () => {
    await server.close()
    await world.store.remove()
  })

  test('a refused fact stays with the answer, holds its own stream only, and is dealt with by a person', async () => {
    const outbox = outboxOf('T1')
    const exchange = await exchangeAs('T1')
    const late = remarkAt('R-1', 'late', { observedAt: '2026-05-12T06:00:00+01:00' })
    await outbox.capture(late)
    await outbox.capture(remarkAt('R-1', 'behind it'))
    await outbox.capture(remarkAt('R-2', 'elsewhere'))
    expect(await outbox.send(exchange)).toEqual({ kind: 'sent' })
    const [first, behind, elsewhere] = await outbox.entries()
    expect(first).toMatchObject({ state: 'refused', refusal: { code: 'late-reason-missing', minutesLate: 180 } })
    expect([behind?.state, elsewhere?.state]).toEqual(['waiting', 'sent'])
    expect(await outbox.status()).toMatchObject({ open: 2, refused: 1, held: 1, oldestAt: Date.parse(NOW) })
    const input = { ...late.input, late: { reason: 'no network below', source: 'memory' } }
    expect((await outbox.sendAgain(first?.id ?? '', { input })).ok).toBe(true)
    expect(await outbox.send(exchange)).toEqual({ kind: 'sent' })
    const arrived = (await factsOf('repair:R-1')).flatMap((one) => (one.kind === 'recorded' ? [one.body.record] : []))
    expect(arrived).toMatchObject([{ text: 'late' }, { text: 'behind it' }])
    expect((await outbox.entries()).find((one) => one.id === first?.id)).toMatchObject({
      state: 'set aside',
      settled: { reason: 'sent again changed' },
    })
  })

  test('the same fact twice is received once; another statement under its id is refused', async () => {
    const exchange = await exchangeAs('T1')
    const id = FactId.parse('019e3333-0000-7000-8000-000000000001')
    const device = { id: 'phone-1', clockOffsetMs: null }
    const entry = (input: object) => ({
      id,
      command: 'record-point' as const,
      input: { ...remarkAt('R-2', 'once').input, device, ...input },
      photos: [],
      madeOffline: false,
    })
    const owner = { tenant: 'tenant-a', person: 'T1' }
    const first = await exchange.send(owner, [entry({})])
    const before = await world.count()
    const again = await exchange.send(owner, [entry({})])
    expect(first).toMatchObject({ kind: 'answered', answers: [{ kind: 'received', id }] })
    expect(again.kind === 'answered' && first.kind === 'answered' && again.answers).toEqual(
      first.kind === 'answered' && first.answers,
    )
    for (const other of [remarkAt('R-2', 'twice').input, { observedAt: '2026-05-12T08:59:00+01:00' }])
      expect(await exchange.send(owner, [entry(other)])).toMatchObject({
        answers: [{ kind: 'refused', refusal: { code: 'id-taken' } }],
      })
    expect(
      await exchange.send(owner, [entry({ observedAt: undefined, enteredAt: undefined, device: undefined })]),
    ).toMatchObject({ answers: [{ kind: 'refused', refusal: { code: 'invalid' } }] })
    expect(await world.count()).toBe(before)
  })

  test('signed out, another person and an old app are states of their own, in which nothing is lost', async () => {
    const outbox = outboxOf('L1')
    await outbox.capture(remarkAt('R-2', 'by the lead'))
    const before = await world.count()
    expect(await outbox.send(createFetchExchange(fetch, server.url))).toEqual({ kind: 'signed-out' })
    expect(await outbox.send(await exchangeAs('T1'))).toEqual({ kind: 'other-person' })
    const asked = await (await fetchAs('L1'))(`${server.url}/api/outbox`, {
      method: 'POST',
      body: JSON.stringify({ v: 0 }),
    })
    expect([asked.status, await asked.json()]).toMatchObject([426, { error: { code: 'version-too-old', oldest: 1 } }])
    expect(await outbox.status()).toMatchObject({ open: 1, refused: 0 })
    expect(await world.count()).toBe(before)
    expect(await outbox.send(await exchangeAs('L1'))).toEqual({ kind: 'sent' })
    expect(await world.count()).toBe(before + 1)
  })

  test('pieces are proved at the end, and are another person’s never', async () => {
    const bytes = await drawScene(200, 150).jpeg().toBuffer()
    const sha256 = createHash('sha256').update(bytes).digest('hex')
    const mine = await exchangeAs('T1')
    const half = { sha256, offset: 0, sizeBytes: bytes.length, bytes: new Blob([bytes.subarray(0, 500)]) }
    expect(await mine.putPiece(half)).toEqual({ kind: 'stands', standing: { offset: 500, isWhole: false } })
    expect(await (await exchangeAs('L1')).standingOf(sha256)).toMatchObject({ standing: { offset: 0 } })
    expect(await mine.putPiece(half)).toMatchObject({ refusal: { code: 'piece-misplaced', offset: 500 } })
    const wrong = { ...half, offset: 500, bytes: new Blob([new Uint8Array(bytes.length - 500)]) }
    expect(await mine.putPiece(wrong)).toMatchObject({ refusal: { code: 'photo-refused', reason: 'digest-differs' } })
    const text = new TextEncoder().encode('no picture at all')
    const ofText = createHash('sha256').update(text).digest('hex')
    const piece = { sha256: ofText, offset: 0, sizeBytes: text.length, bytes: new Blob([text]) }
    expect(await mine.putPiece(piece)).toMatchObject({ refusal: { code: 'photo-refused', reason: 'unknown-type' } })
    expect(await mine.standingOf(ofText)).toMatchObject({ standing: { offset: 0, isWhole: false } })
  })

  test('a decision made without a network on heads that moved is kept as a conflict, once', async () => {
    const outbox = outboxOf('L1', { isOnline: () => false })
    await world.put([])
    const heads = [{ stream: 'repair:R-1', length: (await factsOf('repair:R-1')).length }]
    await outbox.capture({
      ...remarkAt('R-1', ''),
      input: { ...remarkAt('R-1', '').input, body: { point: '05', attempt: 1, record: PERMIT } },
    })
    await outbox.capture({
      command: 'submit-point',
      input: { stream: 'repair:R-1', body: { point: '05', attempt: 1, heads } },
    })
    const exchange = await exchangeAs('L1')
    await outbox.send(exchange)
    const refused = (await outbox.entries()).find((one) => one.state === 'refused')
    expect(refused).toMatchObject({
      command: 'submit-point',
      refusal: { code: 'heads-moved', conflict: expect.any(String) },
    })
    await outbox.tryAgain(refused?.id ?? '')
    await outbox.send(exchange)
    const [note, ...more] = ofKind(await factsOf('device:phone-1'), 'conflict-noted')
    expect(more).toEqual([])
    expect(note?.body).toMatchObject({
      repair: 'repair:R-1',
      remark: expect.stringMatching(/submit-point of point 05/),
    })
  })

  test('a file carried by hand arrives as if it had been sent, and only by its own person', async () => {
    const store = createMemoryOutboxStore()
    const outbox = outboxOf('T1', { store, isOnline: () => false })
    const me = { tenant: 'tenant-a', person: 'T1' }
    const words = 'wet gloves and glare'
    await outbox.capture(photoAt('R-2', 'carried', await drawScene(180, 140).jpeg().toBuffer()))
    await outbox.capture(remarkAt('R-2', 'carried'))
    const file = await writeOutboxFile({ store, owner: me, nowMs: Date.parse(NOW) }, words)
    if (!file.ok) throw new Error(file.error.code)
    const exchange = await exchangeAs('T1')
    const before = await world.count()
    expect(await carryInFile(file.value, 'another passphrase', me, exchange)).toMatchObject({
      error: { code: 'passphrase-wrong' },
    })
    expect(await carryInFile(file.value.slice(0, -30), words, me, exchange)).toMatchObject({
      error: { code: 'passphrase-wrong' },
    })
    expect(await carryInFile(file.value, words, { ...me, person: 'L1' }, exchange)).toMatchObject({
      error: { code: 'other-person' },
    })
    const carried = await carryInFile(file.value, words, me, exchange)
    expect(carried).toMatchObject({
      value: { outcome: { kind: 'sent' }, entries: [{ state: 'sent' }, { state: 'sent' }] },
    })
    expect(await outbox.send(exchange)).toEqual({ kind: 'sent' })
    expect(await outbox.status()).toMatchObject({ open: 0 })
    expect(await world.count()).toBe(before + 2)
  })
})
