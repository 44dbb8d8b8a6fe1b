import { describe, expect, test } from 'vitest'
import type { OutboxEntry } from '@/lib/capture/outbox/outbox-entry'
import { localFacts, unsentPhotos } from '@/lib/capture/site/local-facts'
import { captureOnSite, stateOnSite } from '@/lib/capture/site/site-state'
import { parseSitePack, type SitePack } from '@/lib/domain/capture/site-pack'
import { PersonId, streamOf } from '@/lib/domain/facts/fact'
import type { FactOf } from '@/lib/domain/facts/fact-kinds'
import { foldRepair } from '@/lib/domain/fold/fold-repair'
import { demoFacts } from '@/lib/server/demo/demo-facts'
import { waitingEntry } from '../outbox/waiting-entry'

const ASOF = '2026-05-29T08:00:00+01:00'
const STREAM = streamOf('repair', 'MD-0042')
const all = demoFacts().facts.map((one) => one.fact)
const records = all.filter((fact): fact is FactOf<'recorded'> => fact.kind === 'recorded' && fact.stream === STREAM)
const hardness = records.find((fact) => fact.body.record.type === 'hardness')
if (!hardness) throw new Error('the demonstration has no hardness')

function packOf(facts: typeof all): SitePack {
  return {
    v: 1,
    tenant: 'demo',
    person: PersonId.parse(hardness?.observedBy),
    roles: ['inspector'],
    stream: STREAM,
    number: 'MD-0042',
    takenAt: ASOF,
    utcOffset: '+01:00',
    clockKind: 'real',
    lateAfterMinutes: 60,
    facts: facts.filter((fact) => !fact.stream.startsWith('repair:') || fact.stream === STREAM),
    stores: [],
    receipts: {},
    digests: {},
    likeness: [],
  }
}

function entryOf(fact: FactOf<'recorded'>, state: OutboxEntry['state'] = 'waiting'): OutboxEntry {
  const { id, stream, body, observedAt, enteredAt, late, device } = fact
  return waitingEntry({
    tenant: 'demo',
    person: fact.observedBy,
    id,
    seq: 1,
    command: 'record-point',
    input: { stream, body, observedAt, enteredAt, ...(late ? { late } : {}), device },
    capturedAt: Date.parse(enteredAt),
    madeOffline: true,
    state,
  })
}

const without = packOf(all.filter((fact) => fact.id !== hardness.id))
const nowMs = Date.parse(ASOF)
const shown = (pack: SitePack, entries: OutboxEntry[]) => {
  const { state } = stateOnSite(pack, entries, nowMs)
  return state.points.map((point) => point.attempts.map((one) => [one.state, one.verdict, one.records.length]))
}

describe('a pinned repair', () => {
  test('folds on the device as on the server', () => {
    const pack = packOf(all)
    const there = foldRepair(pack.facts, STREAM, ASOF, { lateAfterMinutes: 60 })
    expect(stateOnSite(pack, [], nowMs).state).toEqual({ ...there, asOf: expect.any(String) })
  })

  test('with an entry of this device it is as if the server had the fact', () => {
    expect(shown(without, [])).not.toEqual(shown(packOf(all), []))
    expect(shown(without, [entryOf(hardness)])).toEqual(shown(packOf(all), []))
    expect(stateOnSite(without, [entryOf(hardness)], nowMs).unsent).toEqual(new Set([hardness.id]))
  })

  test('what was sent counts until the repair is taken anew, and is no longer marked', () => {
    const sent = [entryOf(hardness, 'sent')]
    expect(shown(without, sent)).toEqual(shown(packOf(all), []))
    expect(stateOnSite(without, sent, nowMs).unsent.size).toBe(0)
    expect(localFacts(sent, new Set([hardness.id]))).toEqual([])
  })

  test.each(['refused', 'set aside'] as const)('what was %s is not in the record', (state) => {
    expect(shown(without, [entryOf(hardness, state)])).toEqual(shown(without, []))
  })

  test('an entry of another repair is not in this one', () => {
    const other = { ...entryOf(hardness), input: { ...entryOf(hardness).input, stream: 'repair:MD-0041' } }
    expect(shown(without, [other])).toEqual(shown(without, []))
  })

  test('a clock that runs behind hides nothing of what was taken along', () => {
    const early = stateOnSite(packOf(all), [], Date.parse('2026-01-01T00:00:00Z'))
    expect(Date.parse(early.asOf)).toBe(nowMs)
    expect(early.state.points.flatMap((point) => point.current.records).length).toBeGreaterThan(10)
  })
})

test('a form draws on the entry that is not sent yet, and lets its own person alone correct it', () => {
  const { point, attempt } = hardness.body
  const ask = { point, attempt, correcting: hardness.id }
  const mine = captureOnSite(without, [entryOf(hardness)], nowMs, ask)
  // as it stands: the demonstration's own correction of C-12 reaches the entry too
  const record = mine?.correcting?.record
  expect(mine?.correcting?.attempt).toBe(attempt)
  expect(record?.type === 'hardness' && JSON.stringify(record)).toContain(
    '"mark":"C-12","reading":{"kind":"number","digits":74',
  )
  expect(mine?.instruments.length).toBeGreaterThan(0)
  const stranger = { ...without, person: PersonId.parse('somebody-else') }
  expect(captureOnSite(stranger, [entryOf(hardness)], nowMs, ask)).toBeNull()
  expect(captureOnSite(without, [], nowMs, { ...ask, correcting: null, point: '99' })).toBeNull()
})

test('photos of this device are told by the demand that they answer', () => {
  const at = { point: '05', attempt: 1 }
  const photo = (demand: string | null, state: OutboxEntry['state'] = 'waiting') => ({
    ...entryOf(hardness, state),
    command: 'attach-photo' as const,
    input: { stream: STREAM, body: { ...at, caption: 'board', ...(demand ? { demand } : {}) } },
  })
  const found = unsentPhotos(
    [photo('band'), photo('band', 'refused'), photo('band', 'sent'), photo(null), entryOf(hardness)],
    { stream: STREAM, ...at },
  )
  expect([...found].map(([demand, entries]) => [demand, entries.length])).toEqual([
    ['band', 2],
    ['', 1],
  ])
  expect(unsentPhotos([photo('band')], { stream: STREAM, ...at, attempt: 2 }).size).toBe(0)
})

test('a pack comes through the wire as it was; one with a fact that this app does not know is refused', () => {
  const pack = packOf(all)
  expect(parseSitePack(JSON.parse(JSON.stringify(pack)))).toEqual({ ok: true, value: pack })
  const [first] = pack.facts
  const strange = { ...pack, facts: [{ ...first, kind: 'never-heard-of' }] }
  expect(parseSitePack(strange)).toMatchObject({ ok: false, error: { code: 'pack-fact-refused' } })
  expect(parseSitePack({ ...pack, v: 2 })).toEqual({ ok: false, error: { code: 'pack-malformed', at: 'v' } })
})
