import { v7 } from 'uuid'
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import type { Captured } from '@/lib/capture/outbox/outbox-terms'
import { type DeviceKey, makeDeviceKey } from '@/lib/capture/signing/device-key'
import type { KeptKey } from '@/lib/capture/signing/key-ring'
import { digestOnDevice, releaseHere, type SigningPlace, signHere } from '@/lib/capture/signing/sign-on-device'
import { FactId, PersonId, type StreamId } from '@/lib/domain/facts/fact'
import type { Fact } from '@/lib/domain/facts/fact-kinds'
import { ofKind } from '@/lib/domain/fold/order-facts'
import { OUTBOX_VERSION } from '@/lib/domain/outbox/exchange'
import { canonicalBytes } from '@/lib/evidence/canonical-bytes'
import { hexDigestOf } from '@/lib/evidence/digest'
import { endSigningKey } from '@/lib/server/commands/end-signing-key'
import { openDesk } from '@/lib/server/commands/open-desk'
import { receiveEntries } from '@/lib/server/commands/receive-entries'
import { recordPoint } from '@/lib/server/commands/record-point'
import { settleConflict } from '@/lib/server/commands/settle-conflict'
import { takeSigningKey } from '@/lib/server/commands/take-signing-key'
import { openWorld, PASSWORD, type World } from './world'
import { DRAWING, groundFacts, PERMIT } from './world-facts'

const at = (minute: number) => `2026-05-12T09:${String(minute).padStart(2, '0')}:00+01:00`

describe('signed on a device without a network', () => {
  let world: World
  // a repair and a device of its own for each test
  let no = 0
  let stream: StreamId
  let device: { id: string; clockOffsetMs: number }
  let deviceKey: DeviceKey
  let keyFact: FactId
  const facts = async () => (await (await openDesk(await world.of('QI'))).factsOf(stream)) ?? []
  const stateNow = async () => (await openDesk(await world.of('QI'))).stateOf(stream)
  const keyOf = (person: string): KeptKey => ({
    tenant: world.store.tenant,
    person: PersonId.parse(person),
    name: `Person ${person}`,
    fact: keyFact,
    privateKey: deviceKey.privateKey,
    pin: { salt: '', iterations: 1, hash: '' },
    triesLeft: 5,
  })
  const placeAt = (minute: number, covers: readonly Fact[]): SigningPlace => ({
    stream,
    point: '05',
    attempt: 1,
    covers: covers.map((fact) => ({ fact: fact.id, sha256: digestOnDevice(fact) })),
    photos: [],
    at: at(minute),
    device,
    isOffline: true,
  })
  const entryOf = ({ id, command, input }: Captured & { id: string }) => ({
    id,
    command,
    input: { ...input, device },
    photos: [],
    madeOffline: true,
  })
  const receive = async (entries: unknown[], person = 'QI') => {
    const answered = await receiveEntries(await world.of(person), {
      v: OUTBOX_VERSION,
      tenant: world.store.tenant,
      person,
      entries,
    })
    if (!answered.ok) throw new Error(JSON.stringify(answered.error))
    return answered.value
  }
  const record = (minute: number) => ({
    id: v7(),
    command: 'record-point',
    photos: [],
    madeOffline: true,
    input: {
      stream,
      body: { point: '05', attempt: 1, record: PERMIT },
      observedAt: at(minute),
      enteredAt: at(minute),
      device,
    },
  })
  const submit = (minute: number, seen: number) => ({
    id: v7(),
    command: 'submit-point',
    photos: [],
    madeOffline: true,
    input: {
      stream,
      body: { point: '05', attempt: 1, heads: [{ stream, length: seen }] },
      observedAt: at(minute),
      enteredAt: at(minute),
      device,
    },
  })
  const release = async (minute: number, seen: number, party: 'crew' | 'inspector' = 'inspector') =>
    releaseHere(keyOf('QI'), { by: 'key' }, placeAt(minute, ofKind(await facts(), 'recorded')), {
      id: v7(),
      signatureId: v7(),
      party,
      scope: { kind: 'whole' },
      heads: [{ stream, length: seen }],
      remark: '',
    })

  beforeAll(async () => {
    deviceKey = await makeDeviceKey()
    world = await openWorld()
  }, 60_000)
  beforeEach(async () => {
    no += 1
    stream = `repair:R-1${no}` as StreamId
    device = { id: `tab-${no}`, clockOffsetMs: 0 }
    await world.store.setNow(at(0))
    const opened = groundFacts().find((one) => one.kind === 'repair-opened')
    if (opened?.kind !== 'repair-opened') throw new Error('no repair in the ground')
    await world.put([{ ...opened, id: v7(), stream, body: { ...(opened.body as object), number: `R-1${no}` } }])
    keyFact = FactId.parse(v7())
    const taken = await takeSigningKey(await world.of('QI'), {
      stream: `device:${device.id}`,
      body: { algorithm: 'ECDSA P-256 SHA-256', publicKey: deviceKey.publicKey },
      id: keyFact,
      signer: { by: 'password', person: 'QI', password: PASSWORD },
    })
    expect(taken).toMatchObject({ ok: true })
    await receive([record(1)])
    await world.store.setNow(at(30))
  })
  afterAll(() => world.store.remove())

  test('a key is taken with the password of the person whom it signs for', async () => {
    const form = (password: string) => ({
      stream: 'device:tab-of-two',
      body: { algorithm: 'ECDSA P-256 SHA-256', publicKey: deviceKey.publicKey },
      id: v7(),
      signer: { by: 'password', person: 'L1', password },
    })
    expect(await takeSigningKey(await world.of('QI'), form('guessed'))).toMatchObject({
      ok: false,
      error: { code: 'password-wrong' },
    })
    expect(await takeSigningKey(await world.of('QI'), form(PASSWORD))).toMatchObject({ ok: true })
    const [key] = (await (await openDesk(await world.of('QI'))).factsOf('device:tab-of-two' as StreamId)) ?? []
    expect(key).toMatchObject({ kind: 'signing-key-taken', observedBy: 'L1' })
  })

  test('a signature is kept at the time it was made, with how, once however often it is sent', async () => {
    const made = await signHere(keyOf('QI'), { by: 'key' }, placeAt(4, ofKind(await facts(), 'recorded')), {
      id: v7(),
      meaning: 'measured',
      role: 'inspector',
    })
    for (let sends = 0; sends < 2; sends += 1)
      expect(await receive([entryOf(made)])).toMatchObject([{ kind: 'received' }])
    expect(ofKind(await facts(), 'signed')).toMatchObject([
      {
        observedAt: at(4),
        observedBy: 'QI',
        body: { method: { kind: 'device', proof: { key: keyFact, gate: 'PIN', offline: true } } },
      },
    ])
    expect((await stateNow())?.points[0]?.current.signatures).toMatchObject([{ state: 'stands' }])
  })

  test('what was changed after signing, or signed with another’s key, is refused', async () => {
    const made = await signHere(keyOf('QI'), { by: 'key' }, placeAt(4, ofKind(await facts(), 'recorded')), {
      id: v7(),
      meaning: 'measured',
      role: 'inspector',
    })
    const changed = { ...entryOf(made), input: { ...entryOf(made).input, observedAt: at(6), enteredAt: at(6) } }
    expect(await receive([changed])).toMatchObject([{ kind: 'refused', refusal: { code: 'key-proof-wrong' } }])
    const other = await signHere(keyOf('L1'), { by: 'key' }, placeAt(4, ofKind(await facts(), 'recorded')), {
      id: v7(),
      meaning: 'performed',
      role: 'lead',
    })
    expect(await receive([entryOf(other)])).toMatchObject([{ kind: 'refused', refusal: { code: 'key-unknown' } }])
    const unknown = await signHere(
      keyOf('QI'),
      { by: 'key' },
      { ...placeAt(4, []), covers: [{ fact: v7(), sha256: '0'.repeat(64) }] },
      { id: v7(), meaning: 'measured', role: 'inspector' },
    )
    expect(await receive([entryOf(unknown)])).toMatchObject([{ kind: 'refused', refusal: { code: 'covers-differ' } }])
    expect(ofKind(await facts(), 'signed')).toEqual([])
  })

  test('a decision is not dated before what the same device had entered', async () => {
    const early = await signHere(keyOf('QI'), { by: 'key' }, placeAt(0, ofKind(await facts(), 'recorded')), {
      id: v7(),
      meaning: 'measured',
      role: 'inspector',
    })
    expect(await receive([entryOf(early)])).toMatchObject([
      { kind: 'refused', refusal: { code: 'decision-misdated', notBefore: at(1) } },
    ])
  })

  test('an ended key signs nothing more; what it signed before stands', async () => {
    const place = placeAt(4, ofKind(await facts(), 'recorded'))
    const said = () => ({ id: v7(), meaning: 'measured' as const, role: 'inspector' as const })
    await receive([entryOf(await signHere(keyOf('QI'), { by: 'key' }, place, said()))])
    const end = { stream: `device:${device.id}`, body: { key: keyFact, reason: 'tablet lost in the sump' } }
    expect(await endSigningKey(await world.of('L1'), end)).toMatchObject({ ok: false, error: { code: 'not-allowed' } })
    expect(await endSigningKey(await world.of('QI'), end)).toMatchObject({ ok: true })
    const late = await signHere(keyOf('QI'), { by: 'key' }, { ...place, at: at(5) }, said())
    expect(await receive([entryOf(late)])).toMatchObject([{ kind: 'refused', refusal: { code: 'key-ended' } }])
    expect((await stateNow())?.points[0]?.current.signatures).toMatchObject([{ state: 'stands' }])
  })

  test('a client without an account signs in person with a drawn signature; the holder’s key witnesses', async () => {
    const drawing = hexDigestOf(canonicalBytes(DRAWING))
    const made = await signHere(
      keyOf('QI'),
      { by: 'in person', person: 'KP', name: 'Person KP', drawing },
      placeAt(4, ofKind(await facts(), 'recorded')),
      { id: v7(), meaning: 'witnessed', role: 'client' },
    )
    expect(await receive([entryOf(made)])).toMatchObject([{ kind: 'refused', refusal: { code: 'invalid' } }])
    const drawn = { ...made, input: { ...made.input, drawing: DRAWING } }
    expect(await receive([entryOf(drawn)])).toEqual([expect.objectContaining({ kind: 'received' })])
    expect(ofKind(await facts(), 'signed').at(-1)).toMatchObject({
      observedBy: 'KP',
      body: { name: 'Person KP', method: { kind: 'in person', witness: 'QI', drawing, proof: { offline: true } } },
    })
    expect(await world.store.photos.has(drawing)).toBe(true)
  })

  test('a release given without a network is judged as the record stood then, and kept as given', async () => {
    const seen = (await facts()).length
    await receive([submit(3, seen)])
    const given = await release(5, seen + 1)
    await world.store.setNow('2026-05-12T19:00:00+01:00')
    expect(await receive([entryOf(given)])).toMatchObject([{ kind: 'received' }])
    expect(ofKind(await facts(), 'released')).toMatchObject([{ observedAt: at(5), observedBy: 'QI' }])
    expect((await stateNow())?.conflicts).toEqual([])
  })

  test('a release that did not know the record is kept in question until a person rules', async () => {
    const seen = (await facts()).length
    await receive([submit(3, seen)])
    const given = await release(5, seen + 1)
    await recordPoint(await world.of('L1'), {
      stream,
      body: { point: '05', attempt: 1, record: { type: 'remark', text: 'the gauge had been dropped' } },
      observedAt: at(4),
      enteredAt: at(4),
      device: { id: 'phone-2', clockOffsetMs: 0 },
    })
    expect(await receive([entryOf(given)])).toMatchObject([{ kind: 'received' }])
    const state = await stateNow()
    const conflict = state?.conflicts.find((one) => one.decision === given.id)
    expect(conflict).toMatchObject({ point: '05', resolved: null })
    expect(state?.points[0]?.current.releases).toMatchObject([{ state: 'in question' }])
    const rule = async (ruling: string) =>
      settleConflict(await world.of('QJ'), {
        stream,
        body: { conflict: conflict?.noted, ruling, reason: 'gauge checked on the block, it holds' },
      })
    expect(await rule('seen')).toMatchObject({ ok: false, error: { code: 'not-decided', why: 'ruling-does-not-fit' } })
    expect(await rule('decision stands')).toMatchObject({ ok: true })
    expect(await rule('decision falls')).toMatchObject({
      ok: false,
      error: { code: 'not-decided', why: 'ruled-already' },
    })
    const ruled = await stateNow()
    expect(ruled?.points[0]?.current.releases).toMatchObject([{ state: 'valid' }])
    expect(ruled?.conflicts.find((one) => one.decision === given.id)?.resolved).toMatchObject({ observedBy: 'QJ' })
  })

  test('nobody releases own work by being without a network, nor a point that lacks its submission', async () => {
    const seen = (await facts()).length
    const unsubmitted = await release(5, seen)
    expect(await receive([entryOf(unsubmitted)])).toMatchObject([
      { kind: 'refused', refusal: { code: 'not-decided', why: 'incomplete' } },
    ])
    await receive([submit(6, seen)])
    const crew = await release(7, seen + 1, 'crew')
    expect(await receive([entryOf(crew)])).toMatchObject([{ kind: 'refused', refusal: { code: 'not-own-role' } }])
  })

  test('what was observed never waits for a refused decision', async () => {
    const early = await signHere(keyOf('QI'), { by: 'key' }, placeAt(0, ofKind(await facts(), 'recorded')), {
      id: v7(),
      meaning: 'measured',
      role: 'inspector',
    })
    const answers = await receive([entryOf(early), record(7), submit(8, 4)])
    expect(answers.map((one) => one.kind)).toEqual(['refused', 'received', 'held'])
  })
})
