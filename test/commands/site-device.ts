import { v7 } from 'uuid'
import type { Captured } from '@/lib/capture/outbox/outbox-terms'
import {
  type DeviceSigner,
  digestOnDevice,
  releaseHere,
  type SigningPlace,
  signHere,
} from '@/lib/capture/signing/sign-on-device'
import { PersonId, StreamId } from '@/lib/domain/facts/fact'
import type { Fact } from '@/lib/domain/facts/fact-kinds'
import { ofKind } from '@/lib/domain/fold/order-facts'
import type { RepairState } from '@/lib/domain/fold/repair-state'
import { OUTBOX_VERSION } from '@/lib/domain/outbox/exchange'
import type { Meaning, Role } from '@/lib/domain/roles'
import { openDesk } from '@/lib/server/commands/open-desk'
import { receiveEntries } from '@/lib/server/commands/receive-entries'
import { keyOfDevice } from './key-of-device'
import type { World } from './world'
import { groundFacts, PERMIT } from './world-facts'

/** A minute of the morning of the test. */
export const at = (minute: number) => `2026-05-12T09:${String(minute).padStart(2, '0')}:00+01:00`

/** What a signature of the device says beside its minute; QI signs by key, as inspector, what was measured, and covers what is recorded. `key` names the person in whose name QI's key signs. */
type Signing = {
  key?: string
  signer?: DeviceSigner
  meaning?: Meaning
  role?: Role
  covers?: SigningPlace['covers']
}

let made = 0

/** A device of QI with a key of its own, at a repair of its own, whose point 05 it recorded at minute 1; the server's clock stands at minute 30. */
export async function siteDevice(world: World) {
  made += 1
  const repair = StreamId.parse(`repair:R-1${made}`)
  const device = { id: `tab-${made}`, clockOffsetMs: 0 }
  const stream = StreamId.parse(`device:${device.id}`)
  const desk = async () => openDesk(await world.of('QI'))
  const facts = async (): Promise<Fact[]> => (await (await desk()).factsOf(repair)) ?? []
  const stateNow = async (): Promise<RepairState | null> => (await desk()).stateOf(repair)
  const placeAt = async (minute: number, covers?: SigningPlace['covers']): Promise<SigningPlace> => ({
    stream: repair,
    point: '05',
    attempt: 1,
    covers:
      covers ?? ofKind(await facts(), 'recorded').map((fact) => ({ fact: fact.id, sha256: digestOnDevice(fact) })),
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
  const decide = (command: string, minute: number, body: object) =>
    entry(command, { stream: repair, body, observedAt: at(minute), enteredAt: at(minute) })
  const record = (minute: number) => entry('record-point', stated(minute, { record: PERMIT }))
  const submit = (minute: number, seen: number) =>
    entry('submit-point', stated(minute, { heads: [{ stream: repair, length: seen }] }))

  await world.store.setNow(at(0))
  const opened = groundFacts().find((one) => one.kind === 'repair-opened')
  if (!opened) throw new Error('no repair in the ground')
  await world.put([{ ...opened, id: v7(), stream: repair, body: { ...(opened.body as object), number: `R-1${made}` } }])
  const { key, publicKey } = await keyOfDevice(world, device.id)
  const keyOf = (person: string) => ({ ...key, person: PersonId.parse(person), name: `Person ${person}` })
  const sign = async (minute: number, more: Signing = {}) => {
    const { signer = { by: 'key' }, meaning = 'measured', role = 'inspector' } = more
    const said = { id: v7(), meaning, role }
    return entryOf(await signHere(keyOf(more.key ?? 'QI'), signer, await placeAt(minute, more.covers), said))
  }
  const release = async (minute: number, seen: number, party: 'crew' | 'inspector' = 'inspector') =>
    entryOf(
      await releaseHere(key, { by: 'key' }, await placeAt(minute), {
        id: v7(),
        signatureId: v7(),
        party,
        scope: { kind: 'whole' },
        heads: [{ stream: repair, length: seen }],
        remark: '',
      }),
    )

  await receive([record(1)])
  await world.store.setNow(at(30))
  return {
    repair,
    stream,
    publicKey,
    keyFact: key.fact,
    facts,
    stateNow,
    receive,
    record,
    submit,
    decide,
    sign,
    release,
  }
}

export type SiteDevice = Awaited<ReturnType<typeof siteDevice>>
