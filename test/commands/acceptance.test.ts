import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import type { StreamId } from '@/lib/domain/facts/fact'
import { ofKind } from '@/lib/domain/fold/order-facts'
import { acceptRepair } from '@/lib/server/commands/accept-repair'
import { agreeDoesNotBlock } from '@/lib/server/commands/agree-does-not-block'
import { openDesk } from '@/lib/server/commands/open-desk'
import { raiseNonconformance } from '@/lib/server/commands/raise-nonconformance'
import { recordPoint } from '@/lib/server/commands/record-point'
import { releasePoint } from '@/lib/server/commands/release-point'
import { signFacts } from '@/lib/server/commands/sign-facts'
import { submitPoint } from '@/lib/server/commands/submit-point'
import { ACCEPTANCE, CHECKLIST } from './walk-to-closing'
import { openWorld, PASSWORD, type World } from './world'
import { DRAWING, PERMIT } from './world-facts'

const stream = 'repair:R-1' as StreamId

describe('from the first release to acceptance', () => {
  let world: World
  const heads = async () => (await openDesk(await world.of('QI'))).headsOf([stream])
  const minute = (at: number) => world.store.setNow(`2026-05-12T09:${String(at).padStart(2, '0')}:00+01:00`)
  const record = async (person: string, point: string, one: object) =>
    recordPoint(await world.of(person), { stream, body: { point, attempt: 1, record: one } })
  const submit = async (point: string) =>
    submitPoint(await world.of('QI'), { stream, body: { point, attempt: 1, heads: await heads() } })
  const release = async (point: string, party: string, person: string, scope: object = { kind: 'whole' }) =>
    releasePoint(await world.of('QI'), {
      stream,
      body: { point, attempt: 1, party, scope, heads: await heads() },
      signer: { by: 'password', person, password: PASSWORD },
    })
  const accept = async (more: object = {}, person = 'QI') =>
    acceptRepair(await world.of('QI'), {
      stream,
      body: { ...ACCEPTANCE, heads: await heads(), ...more },
      signer: { by: 'password', person, password: PASSWORD },
    })

  beforeAll(async () => {
    world = await openWorld()
  })
  afterAll(() => world.store.remove())

  test('a point blocked by an unreleased one is not released', async () => {
    minute(1)
    expect(await record('L1', '05', PERMIT)).toMatchObject({ ok: true })
    expect(await submit('05')).toMatchObject({ ok: true })
    expect(await release('06', 'inspector', 'QI')).toMatchObject({
      ok: false,
      error: { code: 'not-decided', why: 'blocked', detail: ['05'] },
    })
  })

  test('every holding party releases for itself, the client in person where it has no account', async () => {
    minute(2)
    expect(await release('05', 'crew', 'L1')).toMatchObject({ ok: true })
    expect(await release('05', 'inspector', 'QI')).toMatchObject({ ok: true })
    minute(5)
    expect(await record('QI', '06', { type: 'remark', text: 'clean and dry' })).toMatchObject({ ok: true })
    expect(await submit('06')).toMatchObject({ ok: true })
    minute(6)
    expect(await release('06', 'inspector', 'QI')).toMatchObject({ ok: true })
    const body = { point: '06', attempt: 1, party: 'client', scope: { kind: 'whole' }, heads: await heads() }
    const inPerson = { by: 'in person', person: 'KP', witnessPassword: PASSWORD, drawing: DRAWING }
    expect(await releasePoint(await world.of('L1'), { stream, body, signer: inPerson })).toMatchObject({ ok: true })
    const facts = (await (await openDesk(await world.of('QI'))).factsOf(stream)) ?? []
    expect(ofKind(facts, 'released').at(-1)).toMatchObject({
      observedBy: 'KP',
      enteredBy: 'KP',
      body: { party: 'client' },
    })
    expect(ofKind(facts, 'signed').at(-1)?.body).toMatchObject({
      role: 'client',
      party: 'client',
      method: { kind: 'in person', witness: 'L1' },
    })
  })

  test('an open nonconformance keeps a repair from acceptance until engineer and client agree that it does not', async () => {
    minute(10)
    expect(await record('QI', '19', CHECKLIST)).toMatchObject({ ok: true })
    expect(await submit('19')).toMatchObject({ ok: true })
    const ncr = {
      stream: 'nonconformance:N-1',
      body: {
        number: 'N-1',
        title: 'Scratch',
        what: 'Paint scratched',
        requirement: '8.2',
        repair: stream,
        linked: [],
        evidence: [],
        blocks: [],
        causeClass: 'method',
      },
    }
    expect(await raiseNonconformance(await world.of('AU'), ncr)).toMatchObject({ ok: true })
    minute(11)
    expect(await accept()).toMatchObject({
      ok: false,
      error: { code: 'not-decided', why: 'nonconformance-open', detail: ['N-1'] },
    })
    const agree = async (person: string, party: string) =>
      agreeDoesNotBlock(await world.of(person), { stream: 'nonconformance:N-1', body: { party, reason: 'paint only' } })
    expect(await agree('E', 'client')).toMatchObject({ ok: false, error: { code: 'not-allowed' } })
    expect(await agree('E', 'engineer')).toMatchObject({ ok: true })
    expect(await agree('K', 'client')).toMatchObject({ ok: true })
  })

  test('an acceptance fits its conditions and is the inspector’s, once', async () => {
    minute(12)
    expect(await accept({}, 'K')).toMatchObject({ ok: false, error: { code: 'not-allowed', needs: ['inspector'] } })
    expect(await accept({ kind: 'accepted on condition' })).toMatchObject({
      ok: false,
      error: { why: 'conditions-do-not-fit' },
    })
    expect(await accept({ kind: 'accepted under concession' })).toMatchObject({
      ok: false,
      error: { code: 'not-decided', why: 'concession-unknown' },
    })
    const accepted = await accept()
    expect(accepted).toMatchObject({ ok: true, value: { facts: [expect.any(String), expect.any(String)] } })
    minute(13)
    expect(await accept()).toMatchObject({ ok: false, error: { why: 'already-accepted' } })
    const form = {
      stream,
      point: '19',
      attempt: 1,
      meaning: 'accepted',
      role: 'client',
      covers: [accepted.ok ? accepted.value.fact : ''],
    }
    expect(
      await signFacts(await world.of('QI'), { ...form, signer: { by: 'password', person: 'K', password: PASSWORD } }),
    ).toMatchObject({ ok: true })
    const state = await (await openDesk(await world.of('QI'))).stateOf(stream)
    expect(state?.acceptance).toMatchObject({ lifeYears: '10', nextInspectionOn: '2027-05-12' })
    expect(state?.acceptance?.signatures.map((one) => one.fact.body.role).sort()).toEqual(['client', 'inspector'])
  })
})
