import { v7 } from 'uuid'
import type { Captured } from '@/lib/capture/outbox/outbox-terms'
import { makeDeviceKey } from '@/lib/capture/signing/device-key'
import type { KeptKey } from '@/lib/capture/signing/key-ring'
import { digestOnDevice, releaseHere, type SigningPlace } from '@/lib/capture/signing/sign-on-device'
import { FactId, PersonId, StreamId } from '@/lib/domain/facts/fact'
import type { Fact } from '@/lib/domain/facts/fact-kinds'
import { ofKind } from '@/lib/domain/fold/order-facts'
import type { RepairState } from '@/lib/domain/fold/repair-state'
import { OUTBOX_VERSION } from '@/lib/domain/outbox/exchange'
import { openDesk } from '@/lib/server/commands/open-desk'
import { receiveEntries } from '@/lib/server/commands/receive-entries'
import { takeSigningKey } from '@/lib/server/commands/take-signing-key'
import { PASSWORD, type World } from './world'
import { groundFacts, PERMIT } from './world-facts'

/** A minute of the morning of the test. */
export const at = (minute: number) => `2026-05-12T09:${String(minute).padStart(2, '0')}:00+01:00`

let made = 0

/** A device of QI with a key of its own, at a repair of its own, whose point 05 it recorded at minute 1; the server's clock stands at minute 30. */
export async function siteDevice(world: World) {
  made += 1
  const repair = StreamId.parse(`repair:R-1${made}`)
  const device = { id: `tab-${made}`, clockOffsetMs: 0 }
  const stream = StreamId.parse(`device:${device.id}`)
  const { privateKey, publicKey } = await makeDeviceKey()
  const keyFact = FactId.parse(v7())
  const desk = async () => openDesk(await world.of('QI'))
  const facts = async (): Promise<Fact[]> => (await (await desk()).factsOf(repair)) ?? []
  const stateNow = async (): Promise<RepairState | null> => (await desk()).stateOf(repair)
  const keyOf = (person: string): KeptKey => ({
    tenant: world.store.tenant,
    person: PersonId.parse(person),
    name: `Person ${person}`,
    fact: keyFact,
    privateKey,
    pin: { salt: '', iterations: 1, hash: '' },
    triesLeft: 5,
  })
  const placeAt = (minute: number, covers: readonly Fact[]): SigningPlace => ({
    stream: repair,
    point: '05',
    attempt: 1,
    covers: covers.map((fact) => ({ fact: fact.id, sha256: digestOnDevice(fact) })),
    photos: [],
    at: at(minute),
    device,
    isOffline: true,
  })
  const entry = (command: string, input: object, id: string = v7()) => ({
    id,
    command,
    input: { ...input, device },
    photos: [],
    madeOffline: true,
  })
  const entryOf = ({ id, command, input }: Captured & { id: string }) => entry(command, input, id)
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
  const stated = (minute: number, body: object) => ({
    stream: repair,
    body: { point: '05', attempt: 1, ...body },
    observedAt: at(minute),
    enteredAt: at(minute),
  })
  const record = (minute: number) => entry('record-point', stated(minute, { record: PERMIT }))
  const submit = (minute: number, seen: number) =>
    entry('submit-point', stated(minute, { heads: [{ stream: repair, length: seen }] }))
  const release = async (minute: number, seen: number, party: 'crew' | 'inspector' = 'inspector') =>
    releaseHere(keyOf('QI'), { by: 'key' }, placeAt(minute, ofKind(await facts(), 'recorded')), {
      id: v7(),
      signatureId: v7(),
      party,
      scope: { kind: 'whole' },
      heads: [{ stream: repair, length: seen }],
      remark: '',
    })

  await world.store.setNow(at(0))
  const opened = groundFacts().find((one) => one.kind === 'repair-opened')
  if (!opened) throw new Error('no repair in the ground')
  await world.put([{ ...opened, id: v7(), stream: repair, body: { ...(opened.body as object), number: `R-1${made}` } }])
  const taken = await takeSigningKey(await world.of('QI'), {
    stream,
    body: { algorithm: 'ECDSA P-256 SHA-256', publicKey },
    id: keyFact,
    signer: { by: 'password', person: 'QI', password: PASSWORD },
  })
  if (!taken.ok) throw new Error(JSON.stringify(taken.error))
  await receive([record(1)])
  await world.store.setNow(at(30))
  return {
    repair,
    stream,
    publicKey,
    keyFact,
    facts,
    stateNow,
    keyOf,
    placeAt,
    entryOf,
    receive,
    record,
    submit,
    release,
  }
}

export type SiteDevice = Awaited<ReturnType<typeof siteDevice>>
