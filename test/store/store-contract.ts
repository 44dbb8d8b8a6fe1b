import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { PersonId, StreamId } from '@/lib/domain/facts/fact'
import { canonicalBytes } from '@/lib/evidence/canonical-bytes'
import { appendFacts } from '@/lib/server/store/append-facts'
import { headsOf } from '@/lib/server/store/heads'
import { loadFact } from '@/lib/server/store/load-facts'
import { loadStream } from '@/lib/server/store/load-stream'
import { makeTenant } from '@/lib/server/store/tenants'
import { countQueries } from './count-queries'
import { type FactJson, remark } from './facts-for-tests'
import { openTestStore, type TestStore } from './test-store'

const QI = PersonId.parse('QI')
const PROJECT = StreamId.parse('project:P-1')

/** What every store keeps to, whichever server is under it. */
export function describeStore(name: string, serverUrl: () => Promise<string | undefined>): void {
  describe(`store on ${name}`, () => {
    let store: TestStore
    const append = (facts: unknown[], more = {}) => appendFacts(store, store.tenant, facts, { receivedBy: QI, ...more })

    beforeAll(async () => {
      const url = await serverUrl()
      store = await openTestStore(url ? { url } : {})
    })
    afterAll(() => store?.remove())

    test('facts get positions from 1 without a gap and a receipt by the store clock', async () => {
      const stream = StreamId.parse('project:P-positions')
      store.setNow('2026-05-12T10:11:12+01:00')
      const first = await append([remark('one', stream), remark('two', stream)])
      const second = await append([remark('three', stream)])
      expect(first.ok && first.value.map((one) => one.receipt.position)).toEqual([1, 2])
      expect(second.ok && second.value[0]?.receipt).toEqual({
        position: 3,
        receivedAt: '2026-05-12T10:11:12+01:00',
        receivedBy: 'QI',
      })
    })

    test('stored bytes are the canonical JSON that was hashed', async () => {
      const fact = remark('kept as written: 2½ µm', 'project:P-bytes')
      const appended = await append([fact])
      const row = await store.db.pool.query<{ bytes: Buffer; sha256: string }>(
        'select bytes, sha256 from facts where id = $1',
        [fact.id],
      )
      expect(row.rows[0]?.bytes.equals(Buffer.from(canonicalBytes(fact)))).toBe(true)
      expect(appended.ok && appended.value[0]?.sha256).toBe(row.rows[0]?.sha256)
    })

    test('the same fact twice is received once and answers with its first receipt', async () => {
      const fact = remark('sent twice', 'project:P-twice')
      store.setNow('2026-05-12T11:00:00+01:00')
      const first = await append([fact])
      store.setNow('2026-05-12T12:00:00+01:00')
      const again = await append([fact])
      expect(again.ok && again.value[0]).toEqual(first.ok && { ...first.value[0], isNew: false })
      expect(await headsOf(store, store.tenant, [StreamId.parse('project:P-twice')])).toEqual([
        { stream: 'project:P-twice', length: 1 },
      ])
    })

    test('an id with other bytes is refused as id-taken, also within one batch', async () => {
      const fact = remark('first text', 'project:P-taken')
      await append([fact])
      expect(await append([{ ...fact, body: { text: 'other text' } }])).toEqual({
        ok: false,
        error: { code: 'id-taken', ids: [fact.id] },
      })
      const twice = remark('a', 'project:P-taken')
      expect(await append([twice, { ...twice, body: { text: 'b' } }])).toEqual({
        ok: false,
        error: { code: 'id-taken', ids: [twice.id] },
      })
    })

    test('one bad fact keeps the whole batch out, and every bad one is named', async () => {
      const good = remark('good', 'project:P-batch')
      const unknown: FactJson = { ...remark('bad', 'project:P-batch'), kind: 'no-such-kind' }
      const refusal = await append([good, unknown, 7])
      expect(refusal).toMatchObject({
        ok: false,
        error: {
          code: 'fact-refused',
          refusals: [
            { index: 1, id: unknown.id, faults: [{ code: 'kind-unknown' }] },
            { index: 2, id: null },
          ],
        },
      })
      expect((await loadStream(store, store.tenant, StreamId.parse('project:P-batch'))).facts).toEqual([])
    })

    test('a decision whose heads moved is refused, naming the stream, and appends nothing', async () => {
      await append([remark('one'), remark('two')])
      const [head] = await headsOf(store, store.tenant, [PROJECT])
      const seen = head ? [head] : []
      expect((await append([remark('in time')], { expectHeads: seen })).ok).toBe(true)
      const moved = await append([remark('too late')], { expectHeads: seen })
      expect(moved).toEqual({
        ok: false,
        error: {
          code: 'heads-moved',
          streams: [{ stream: PROJECT, expected: head?.length, found: (head?.length ?? 0) + 1 }],
        },
      })
    })

    test('a decision sent again after it was kept is answered, though it moved the heads itself', async () => {
      const stream = StreamId.parse('project:P-again')
      const fact = remark('decision', stream)
      const options = { expectHeads: [{ stream, length: 0 }] }
      expect((await append([fact], options)).ok).toBe(true)
      expect((await append([fact], options)).ok).toBe(true)
    })

    test('twenty writers of one stream leave no gap and no double', async () => {
      const stream = StreamId.parse('project:P-crowd')
      await Promise.all(
        Array.from({ length: 20 }, (_, at) => append([remark(`a${at}`, stream), remark(`b${at}`, stream)])),
      )
      const { facts, receipts } = await loadStream(store, store.tenant, stream)
      expect(facts.map((fact) => receipts.get(fact.id)?.position)).toEqual(
        Array.from({ length: 40 }, (_, at) => at + 1),
      )
    })

    test('writers that take two streams in opposite order do not lock each other out', async () => {
      const tasks = Array.from({ length: 12 }, (_, at) =>
        at % 2 ? ['project:P-x', 'project:P-y'] : ['project:P-y', 'project:P-x'],
      )
      const done = await Promise.all(
        tasks.map((streams) => append(streams.map((stream) => remark('crossing', stream)))),
      )
      expect(done.every((one) => one.ok)).toBe(true)
    })

    test('leaves number the facts of a tenant in the order of receipt without a gap', async () => {
      const rows = await store.db.pool.query<{ leaf: string }>(
        'select leaf from facts where tenant = $1 order by leaf',
        [store.tenant],
      )
      expect(rows.rows.length).toBeGreaterThan(40)
      expect(rows.rows.map((row) => Number(row.leaf))).toEqual(rows.rows.map((_, at) => at))
    })

    test('an unknown tenant is refused; another tenant has the same stream name and never sees this one', async () => {
      const fact = remark('mine', 'project:P-own')
      expect(await appendFacts(store, 'nobody', [fact], { receivedBy: QI })).toEqual({
        ok: false,
        error: { code: 'tenant-unknown' },
      })
      await makeTenant(store, { id: 'tenant-b', slug: 'b', name: 'Another Body' })
      await append([fact])
      expect(
        (await appendFacts(store, 'tenant-b', [{ ...fact, body: { text: 'theirs' } }], { receivedBy: QI })).ok,
      ).toBe(true)
      expect(
        (await loadStream(store, 'tenant-b', StreamId.parse('project:P-own'))).facts.map((one) => one.body),
      ).toEqual([{ text: 'theirs' }])
    })

    test('a byte changed in the database is told, with the place, and never folded', async () => {
      const stream = StreamId.parse('project:P-tampered')
      const fact = remark('as it was', stream)
      const appended = await append([remark('before', stream), fact])
      await store.db.pool.query(
        `update facts set bytes = convert_to(replace(convert_from(bytes, 'UTF8'), 'as it was', 'as it is!'), 'UTF8') where id = $1`,
        [fact.id],
      )
      await expect(loadStream(store, store.tenant, stream)).rejects.toMatchObject({
        code: 'stored-fact-broken',
        stream,
        position: 2,
      })
      const id = appended.ok ? appended.value[1]?.id : undefined
      if (!id) throw new Error('the fact was not appended')
      await expect(loadFact(store, store.tenant, id)).rejects.toMatchObject({ code: 'stored-fact-broken' })
    })

    test('appending a fact takes nine round trips to the server at most, however long the stream is', async () => {
      const stream = 'project:P-fast'
      await append(Array.from({ length: 300 }, (_, at) => remark(`before ${at}`, stream)))
      const asked = countQueries(store)
      expect((await append([remark('one more', stream)])).ok).toBe(true)
      expect(asked()).toBeGreaterThan(3)
      expect(asked()).toBeLessThanOrEqual(9)
    })
  })
}
