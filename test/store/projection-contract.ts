import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { PersonId, StreamId } from '@/lib/domain/facts/fact'
import { appendFacts } from '@/lib/server/store/append-facts'
import { listRepairs } from '@/lib/server/store/list-repairs'
import { listUses } from '@/lib/server/store/list-uses'
import { loadRepair } from '@/lib/server/store/load-repair'
import { streamsOfRepair } from '@/lib/server/store/load-repair-facts'
import { likenessOf, photosOfObject } from '@/lib/server/store/photo-likeness'
import { reproject } from '@/lib/server/store/reproject'
import { factJson } from './facts-for-tests'
import { groundFacts, photoFact, repairFacts } from './repair-for-tests'
import { openTestStore, type TestStore } from './test-store'

const QI = PersonId.parse('QI')
const R1 = StreamId.parse('repair:MD-1')
const R2 = StreamId.parse('repair:MD-2')
const BATCH = StreamId.parse('batch:FP-1')
const NONCONFORMANCE = StreamId.parse('nonconformance:NCR-1')

/** What is derived from the facts, on every store. */
export function describeProjections(name: string, serverUrl: () => Promise<string | undefined>): void {
  describe(`projections on ${name}`, () => {
    let store: TestStore
    const append = async (facts: unknown[]) => {
      const appended = await appendFacts(store, store.tenant, facts, { receivedBy: QI })
      if (!appended.ok) throw new Error(JSON.stringify(appended.error))
    }
    const dump = async () => {
      const tables = ['fact_cites', 'repairs', 'uses', 'photos', 'issues', 'projection_debts']
      const rows = await Promise.all(
        tables.map((table) => store.db.pool.query(`select t::text as row from ${table} t order by 1`)),
      )
      return rows.map((answer) => answer.rows)
    }

    beforeAll(async () => {
      const url = await serverUrl()
      store = await openTestStore({ ...(url ? { url } : {}), now: '2026-05-12T12:00:00+01:00' })
      await append([...groundFacts(), ...repairFacts('MD-1'), ...repairFacts('MD-2')])
    })
    afterAll(() => store?.remove())

    test('a list shows every repair as folded, with the points on which work is due', async () => {
      const rows = await listRepairs(store, store.tenant)
      expect(rows.map((row) => row.number)).toEqual(['MD-1', 'MD-2'])
      expect(rows[0]).toMatchObject({ line: 'MDW-250', project: 'project:P-1', nonconformances: [] })
      expect(rows[0]?.waiting.map((one) => one.point)).toContain('01')
    })

    test('a batch leads to every mix that used it, in time order', async () => {
      const uses = await listUses(store, store.tenant, [BATCH])
      expect(uses.map((use) => [use.repair, use.point, use.into])).toEqual([
        [R1, '10', expect.any(String)],
        [R1, '10', expect.any(String)],
        [R2, '10', expect.any(String)],
        [R2, '10', expect.any(String)],
      ])
      expect(await listUses(store, store.tenant, [BATCH], { from: '2026-05-13T00:00:00+01:00' })).toEqual([])
      expect((await listUses(store, store.tenant, [StreamId.parse('instrument:WB-09')])).length).toBe(2)
    })

    test('a repair is loaded with what it cites and with what cites it', async () => {
      await append([
        factJson(
          NONCONFORMANCE,
          'nonconformance-raised',
          {
            number: 'NCR-1',
            title: 'Ratio',
            what: 'ratio off',
            requirement: '7.1',
            repair: R1,
            linked: [],
            evidence: [],
            blocks: [],
            causeClass: 'method',
          } as never,
          { observedBy: 'AU', enteredBy: 'AU' },
        ),
        factJson('person:AU', 'person-registered', {
          name: 'Hesper Noorland',
          party: 'inspection body',
          title: 'Auditor',
        } as never),
      ])
      const streams = [...(await streamsOfRepair(store, store.tenant, R1)).keys()]
      for (const stream of ['project:P-1', 'specification:S-1', 'plan:ITP-1', BATCH, NONCONFORMANCE, 'person:AU'])
        expect(streams).toContain(stream)
      expect(streams).not.toContain(R2)
      expect([...(await streamsOfRepair(store, store.tenant, R2)).keys()]).not.toContain(NONCONFORMANCE)
      const loaded = await loadRepair(store, store.tenant, R1)
      expect(loaded?.state.nonconformances.map((one) => one.number)).toEqual(['NCR-1'])
      expect(loaded?.receipts.size).toBe(loaded?.facts.length)
      expect((await listRepairs(store, store.tenant)).map((row) => row.nonconformances.length)).toEqual([1, 0])
    })

    test('a fact in a cited stream folds every repair that cites it again', async () => {
      const before = await listRepairs(store, store.tenant)
      expect((await store.db.pool.query('select 1 from projection_debts')).rowCount).toBe(0)
      store.setNow('2026-05-12T13:00:00+01:00')
      await append([
        factJson(BATCH, 'batch-recalled', { reason: 'maker says so', by: 'maker' } as never, {
          observedAt: '2026-05-12T12:30:00+01:00',
        }),
      ])
      const owed = await store.db.pool.query<{ repair: string }>('select repair from projection_debts order by 1')
      expect(owed.rows.map((row) => row.repair)).toEqual([R1, R2])
      const after = await listRepairs(store, store.tenant)
      expect(after.map((row) => row.foldedAt)).toEqual(['2026-05-12T13:00:00+01:00', '2026-05-12T13:00:00+01:00'])
      expect(before.map((row) => row.number)).toEqual(after.map((row) => row.number))
    })

    test('before it was opened a repair is not there', async () => {
      expect(await loadRepair(store, store.tenant, R1, '2026-05-01T08:00:00+01:00')).toBeNull()
      expect(await loadRepair(store, store.tenant, StreamId.parse('repair:NONE'))).toBeNull()
    })

    test('the same file in another repair is an exact copy, a like one a near copy, an unlike one neither', async () => {
      const look = { sha256: '1'.repeat(64), dHash: '00000000000000ff', pHash: '000000000000ffff' }
      const near = { sha256: '2'.repeat(64), dHash: '00000000000000fe', pHash: '000000000000fffe' }
      const unlike = { sha256: '3'.repeat(64), dHash: 'ffffffffffffff00', pHash: 'ffffffffffff0000' }
      const [first, copy, alike] = [photoFact('MD-1', look), photoFact('MD-2', look), photoFact('MD-2', near)]
      await append([first, copy, alike, photoFact('MD-2', unlike)])
      const found = await likenessOf(store, store.tenant, look)
      expect(found.map((one) => [one.kind, one.other.repair, one.other.fact])).toEqual([
        ['exact copy', R1, first.id],
        ['exact copy', R2, copy.id],
        ['near copy', R2, alike.id],
      ])
      const state = (await loadRepair(store, store.tenant, R1))?.state
      const flags = state?.points.flatMap((point) =>
        point.attempts.flatMap((attempt) =>
          attempt.photos.flatMap((photo) => photo.flags.map((flag) => [flag.kind, flag.other?.fact])),
        ),
      )
      expect(flags).toEqual([
        ['exact copy', copy.id],
        ['near copy', alike.id],
      ])
      expect((await photosOfObject(store, store.tenant, look.sha256)).map((one) => one.repair)).toEqual([R1, R2])
      expect(await photosOfObject(store, 'tenant-b', look.sha256)).toEqual([])
    })

    test('rebuilding every projection changes nothing', async () => {
      await listRepairs(store, store.tenant)
      const before = await dump()
      const counted = await reproject(store, store.tenant)
      expect(counted.repairCount).toBe(2)
      expect(await dump()).toEqual(before)
    })
  })
}
