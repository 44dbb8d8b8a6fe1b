import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import type { StreamId } from '@/lib/domain/facts/fact'
import type { FactOf } from '@/lib/domain/facts/fact-kinds'
import { ofKind } from '@/lib/domain/fold/order-facts'
import { openAttempt } from '@/lib/server/commands/open-attempt'
import { openDesk } from '@/lib/server/commands/open-desk'
import { recordPoint } from '@/lib/server/commands/record-point'
import { refuseRelease } from '@/lib/server/commands/refuse-release'
import { releasePoint } from '@/lib/server/commands/release-point'
import { signFacts } from '@/lib/server/commands/sign-facts'
import { submitPoint } from '@/lib/server/commands/submit-point'
import { withdrawRelease } from '@/lib/server/commands/withdraw-release'
import { loadStream } from '@/lib/server/store/load-stream'
import { openWorld, PASSWORD, type World } from './world'
import { PERMIT } from './world-facts'

const stream = 'repair:R-1' as StreamId
const at = { point: '05', attempt: 1 }
const mine = (person: string, password = PASSWORD) => ({ by: 'password', person, password })

describe('from record to release', () => {
  let world: World
  let record: string
  const heads = async () => (await openDesk(await world.of('QI'))).headsOf([stream])
  const release = async (more: object, signer: object = mine('QI')) =>
    releasePoint(await world.of('QI'), {
      stream,
      body: { ...at, party: 'inspector', scope: { kind: 'whole' }, heads: await heads(), ...more },
      signer,
    })
  const facts = async () => (await loadStream(world.store, world.store.tenant, stream)).facts

  beforeAll(async () => {
    world = await openWorld()
  })
  afterAll(() => world.store.remove())

  test('an attempt without its record cannot be submitted', async () => {
    const outcome = await submitPoint(await world.of('L1'), { stream, body: { ...at, heads: await heads() } })
    expect(outcome).toMatchObject({ ok: false, error: { code: 'not-decided', why: 'incomplete' } })
  })

  test('a record is kept as keyed, once for the same id', async () => {
    const lead = await world.of('L1')
    const entry = { id: '019e1111-0000-7000-8000-000000000001', stream, body: { ...at, record: PERMIT } }
    const first = await recordPoint(lead, entry)
    const second = await recordPoint(lead, entry)
    expect(first).toMatchObject({ ok: true, value: { fact: entry.id } })
    expect(second).toEqual(first)
    expect(
      await recordPoint(lead, { ...entry, body: { ...at, record: { ...PERMIT, permitNo: 'P-78' } } }),
    ).toMatchObject({ ok: false, error: { code: 'id-taken' } })
    record = entry.id
  })

  test('an entry long after the event needs its reason', async () => {
    const late = {
      stream,
      body: { ...at, record: { type: 'remark', text: 'wind rose' } },
      observedAt: '2026-05-12T07:30:00+01:00',
    }
    const lead = await world.of('L1')
    expect(await recordPoint(lead, late)).toMatchObject({
      ok: false,
      error: { code: 'late-reason-missing', minutesLate: 90 },
    })
    expect(await recordPoint(lead, { ...late, enteredAt: '2026-05-14T07:30:00+01:00' })).toMatchObject({
      ok: false,
      error: { code: 'entered-in-future' },
    })
    expect(
      await recordPoint(lead, { ...late, late: { reason: 'no network below ground', source: 'paper tally' } }),
    ).toMatchObject({ ok: true })
  })

  test('a release waits for submission', async () => {
    expect(await release({})).toMatchObject({
      ok: false,
      error: { code: 'not-decided', why: 'incomplete', detail: expect.arrayContaining(['Not submitted.']) },
    })
    expect(
      await refuseRelease(await world.of('QI'), {
        stream,
        body: { ...at, party: 'inspector', reason: 'see below', heads: await heads() },
      }),
    ).toMatchObject({ ok: false, error: { why: 'not-submitted' } })
    const submitted = await submitPoint(await world.of('L1'), { stream, body: { ...at, heads: await heads() } })
    expect(submitted).toMatchObject({ ok: true })
  })

  test('a decision on what moved on is refused, with what moved', async () => {
    const seen = (await heads()).map((head) => ({ ...head, length: head.length - 1 }))
    const now = (await heads())[0]?.length
    expect(await release({ heads: seen })).toMatchObject({
      ok: false,
      error: { code: 'heads-moved', moved: [{ stream, seen: (now ?? 0) - 1, now }] },
    })
    expect(await release({ heads: [] })).toMatchObject({ ok: false, error: { code: 'invalid' } })
  })

  test('a release takes no time of the caller’s choice', async () => {
    const form = {
      stream,
      body: { ...at, party: 'inspector', scope: { kind: 'whole' }, heads: await heads() },
      signer: mine('QI'),
      observedAt: '2026-05-12T08:00:00+01:00',
    }
    expect(await releasePoint(await world.of('QI'), form)).toMatchObject({ ok: false, error: { code: 'invalid' } })
  })

  test('a party releases its own hold alone, at the current attempt', async () => {
    expect(await release({ party: 'client' }, mine('QI'))).toMatchObject({
      ok: false,
      error: { code: 'not-allowed', needs: ['client'] },
    })
    expect(await release({ party: 'client' }, mine('K'))).toMatchObject({
      ok: false,
      error: { code: 'not-decided', why: 'not-a-hold' },
    })
    expect(await release({ attempt: 2 })).toMatchObject({ ok: false, error: { code: 'no-such-attempt' } })
  })

  test('a release and its signature are kept together, over the release and the records', async () => {
    const before = (await facts()).length
    const outcome = await release({})
    expect(outcome).toMatchObject({ ok: true, value: { length: before + 2 } })
    const all = await loadStream(world.store, world.store.tenant, stream)
    const released = all.facts.at(-2) as FactOf<'released'>
    const signed = all.facts.at(-1) as FactOf<'signed'>
    expect(signed.body).toMatchObject({ meaning: 'released', role: 'inspector', name: 'Person QI' })
    expect(signed.body.covers).toContainEqual({ fact: released.id, sha256: all.sha256Of.get(released.id) })
    expect(signed.body.covers).toContainEqual({ fact: record, sha256: all.sha256Of.get(record as never) })
    expect(await release({})).toMatchObject({ ok: false, error: { code: 'not-decided', why: 'already-released' } })
  })

  test('who signed the work as performed does not release it', async () => {
    const lead = await world.of('L1')
    await signFacts(lead, { stream, ...at, meaning: 'performed', role: 'lead', covers: [record], signer: mine('L1') })
    expect(await release({ party: 'crew' }, mine('L1'))).toMatchObject({
      ok: false,
      error: { code: 'not-decided', why: 'own-work' },
    })
  })

  test('a release is withdrawn once, and rework opens the next attempt', async () => {
    const released = ofKind(await facts(), 'released').at(-1)
    const body = { release: released?.id, cause: 'weep', reason: 'water seen at the ring' }
    expect(await withdrawRelease(await world.of('QI'), { stream, body })).toMatchObject({ ok: true })
    expect(await withdrawRelease(await world.of('QI'), { stream, body })).toMatchObject({
      ok: false,
      error: { code: 'not-decided', why: 'release-fallen' },
    })
    expect(
      await openAttempt(await world.of('L1'), {
        stream,
        body: { points: ['05'], attempt: 1, reason: 'again from the start' },
      }),
    ).toMatchObject({ ok: false, error: { code: 'no-such-attempt' } })
    expect(
      await openAttempt(await world.of('L1'), {
        stream,
        body: { points: ['05'], attempt: 2, reason: 'again from the start' },
      }),
    ).toMatchObject({ ok: true })
  })
})
