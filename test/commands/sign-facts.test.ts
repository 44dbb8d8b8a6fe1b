import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { FactId, PersonId, type StreamId } from '@/lib/domain/facts/fact'
import { ofKind } from '@/lib/domain/fold/order-facts'
import { signFacts } from '@/lib/server/commands/sign-facts'
import { loadStream } from '@/lib/server/store/load-stream'
import { factJson } from '@/test/store/facts-for-tests'
import { openWorld, PASSWORD, type World } from './world'
import { DRAWING, PERMIT } from './world-facts'

const stream = 'repair:R-1' as StreamId
const at = { point: '05', attempt: 1 }
const mine = (person: string, password = PASSWORD) => ({ by: 'password', person, password })
const record = FactId.parse('019e1111-0000-7000-8000-000000000001')

describe('signing', () => {
  let world: World
  const facts = async () => (await loadStream(world.store, world.store.tenant, stream)).facts
  beforeAll(async () => {
    world = await openWorld()
    const by = { observedBy: PersonId.parse('L1'), enteredBy: PersonId.parse('L1') }
    await world.put([
      factJson(stream, 'recorded', { ...at, record: PERMIT } as never, {
        id: record,
        observedAt: '2026-05-12T08:50:00+01:00',
        ...by,
      }),
    ])
  })
  afterAll(() => world.store.remove())

  test('a signature asks for the signer’s own password and covers exact bytes', async () => {
    const lead = await world.of('L1')
    const form = { stream, ...at, meaning: 'checked', role: 'lead', covers: [record] }
    expect(await signFacts(lead, { ...form, signer: mine('L1', 'wrong') })).toMatchObject({
      ok: false,
      error: { code: 'password-wrong' },
    })
    expect(await signFacts(lead, { ...form, role: 'inspector', signer: mine('L1') })).toMatchObject({
      ok: false,
      error: { code: 'not-own-role' },
    })
    expect(await signFacts(lead, { ...form, meaning: 'accepted', signer: mine('L1') })).toMatchObject({
      ok: false,
      error: { code: 'meaning-not-for-role' },
    })
    expect(
      await signFacts(lead, { ...form, covers: ['019e9999-0000-7000-8000-000000000001'], signer: mine('L1') }),
    ).toMatchObject({ ok: false, error: { code: 'not-found' } })
    expect(await signFacts(lead, { ...form, signer: mine('L1') })).toMatchObject({ ok: true })
    const { facts, sha256Of } = await loadStream(world.store, world.store.tenant, stream)
    const signed = ofKind(facts, 'signed').at(-1)
    expect(signed).toMatchObject({
      observedBy: 'L1',
      body: {
        meaning: 'checked',
        role: 'lead',
        party: 'crew',
        name: 'Person L1',
        covers: [{ fact: record, sha256: sha256Of.get(record as never) }],
      },
    })
  })

  test('the tablet’s user is not the signer: whose password it is signs', async () => {
    const outcome = await signFacts(await world.of('L1'), {
      stream,
      ...at,
      meaning: 'measured',
      role: 'inspector',
      covers: [record],
      signer: mine('QJ'),
    })
    expect(outcome.ok).toBe(true)
    expect(ofKind(await facts(), 'signed').at(-1)).toMatchObject({ observedBy: 'QJ', body: { role: 'inspector' } })
  })

  test('a client without an account signs in person; the tablet’s holder witnesses with a password', async () => {
    const form = { stream, ...at, meaning: 'witnessed', role: 'client', covers: [record] }
    const lead = await world.of('L1')
    const inPerson = (person: string, witnessPassword = PASSWORD) => ({
      by: 'in person',
      person,
      witnessPassword,
      drawing: DRAWING,
    })
    expect(await signFacts(lead, { ...form, signer: inPerson('K') })).toMatchObject({
      ok: false,
      error: { code: 'signer-has-account' },
    })
    expect(await signFacts(lead, { ...form, signer: inPerson('L1') })).toMatchObject({
      ok: false,
      error: { code: 'witness-is-signer' },
    })
    expect(await signFacts(lead, { ...form, signer: inPerson('NOBODY') })).toMatchObject({
      ok: false,
      error: { code: 'signer-unknown' },
    })
    expect(await signFacts(lead, { ...form, signer: inPerson('KP', 'wrong') })).toMatchObject({
      ok: false,
      error: { code: 'password-wrong' },
    })
    expect(await signFacts(lead, { ...form, signer: inPerson('KP') })).toMatchObject({ ok: true })
    expect(ofKind(await facts(), 'signed').at(-1)?.body.method).toEqual({
      kind: 'in person',
      witness: 'L1',
      drawing: expect.stringMatching(/^[0-9a-f]{64}$/),
    })
  })

  test('after five wrong passwords even the right one waits', async () => {
    const form = { stream, ...at, meaning: 'measured', role: 'inspector', covers: [record] }
    const inspector = await world.of('QI')
    for (let tries = 0; tries < 5; tries += 1)
      expect(await signFacts(inspector, { ...form, signer: mine('QI', 'wrong') })).toMatchObject({
        ok: false,
        error: { code: 'password-wrong' },
      })
    expect(await signFacts(inspector, { ...form, signer: mine('QI') })).toMatchObject({
      ok: false,
      error: { code: 'too-many-tries', retryAfterSeconds: expect.any(Number) },
    })
  })

  test('approving is for an inspector with that right', async () => {
    const form = { stream, ...at, meaning: 'approved', role: 'inspector', covers: [record] }
    const lead = await world.of('L1')
    expect(await signFacts(lead, { ...form, signer: mine('QJ') })).toMatchObject({ ok: true })
    expect(await signFacts(lead, { ...form, role: 'client', signer: mine('K') })).toMatchObject({ ok: true })
  })
})
