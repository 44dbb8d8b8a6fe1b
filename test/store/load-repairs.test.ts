import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { PersonId, StreamId } from '@/lib/domain/facts/fact'
import type { Moment } from '@/lib/domain/time'
import { demoFacts } from '@/lib/server/demo/demo-facts'
import { DEMO_START } from '@/lib/server/demo/demo-time'
import { appendFacts } from '@/lib/server/store/append-facts'
import { loadRepair, loadRepairs } from '@/lib/server/store/load-repair'
import { factJson } from './facts-for-tests'
import { openTestStore, type TestStore } from './test-store'

const QI = PersonId.parse('QI')
const THIRD = StreamId.parse('repair:MD-0043')
const at = (clock: string): Moment => `2026-05-29T${clock}+01:00`

describe('all repairs of a tenant, read again and again', () => {
  let store: TestStore
  const append = async (facts: unknown[]) => {
    const appended = await appendFacts(store, store.tenant, facts, { receivedBy: QI })
    if (!appended.ok) throw new Error(JSON.stringify(appended.error))
  }
  const load = async (clock: string) => {
    store.setNow(at(clock))
    return loadRepairs(store, store.tenant)
  }
  const heldFact = (state: 'on hold' | 'resumed', observedAt: Moment) =>
    factJson(THIRD, 'repair-held', { state, reason: 'crane taken away' }, { observedAt, enteredAt: at('08:30:00') })

  beforeAll(async () => {
    store = await openTestStore({ now: DEMO_START })
    await append(demoFacts().facts.map((one) => one.fact))
  }, 120_000)
  afterAll(() => store?.remove())

  test('each is as it is loaded by itself', async () => {
    const states = await load('08:10:00')
    expect(states.map((one) => one.number)).toEqual(['MD-0041', 'MD-0042', 'MD-0043', 'MD-0044'])
    for (const state of states)
      expect(JSON.stringify((await loadRepair(store, store.tenant, state.stream))?.state)).toBe(JSON.stringify(state))
  })

  test('within a minute nothing is folded or loaded again: one round trip answers', async () => {
    const before = await load('08:20:00')
    let trips = 0
    const count = () => {
      trips += 1
    }
    store.db.pool.on('acquire', count)
    const again = await load('08:20:59')
    store.db.pool.off('acquire', count)
    expect(trips).toBe(1)
    expect(again.every((state, index) => state === before[index])).toBe(true)
  })

  test('no state is a minute old', async () => {
    const before = await load('08:25:00')
    const after = await load('08:26:00')
    expect(after.map((one) => one.asOf)).toEqual(after.map(() => at('08:26:00')))
    expect(after.some((state, index) => state === before[index])).toBe(false)
  })

  test('a new fact shows at once, in its repair only; one observed ahead of the clock when its time has come', async () => {
    const before = await load('08:30:00')
    await append([heldFact('resumed', at('08:29:00')), heldFact('on hold', at('08:30:40'))])
    const resumed = await load('08:30:10')
    expect([before[2]?.status, resumed[2]?.status]).toEqual(['on hold', 'in progress'])
    expect(resumed.map((state, index) => state === before[index])).toEqual([true, true, false, true])
    expect((await load('08:30:39'))[2]).toBe(resumed[2])
    expect((await load('08:30:40'))[2]?.status).toBe('on hold')
  })
})
