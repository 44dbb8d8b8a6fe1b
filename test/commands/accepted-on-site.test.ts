import { v7 } from 'uuid'
import { afterAll, beforeAll, expect, test } from 'vitest'
import type { OutboxEntry } from '@/lib/capture/outbox/outbox-entry'
import type { Captured } from '@/lib/capture/outbox/outbox-terms'
import { attemptAsSigned } from '@/lib/capture/signing/attempt-as-signed'
import type { KeptKey } from '@/lib/capture/signing/key-ring'
import { acceptHere, digestOnDevice, type SigningPlace, signHere } from '@/lib/capture/signing/sign-on-device'
import { factsOfEntry } from '@/lib/capture/site/local-facts'
import { stateOnSite } from '@/lib/capture/site/site-state'
import { parseSitePack, type SitePack } from '@/lib/domain/capture/site-pack'
import type { StreamId } from '@/lib/domain/facts/fact'
import { REPAIR_BODIES } from '@/lib/domain/facts/repair-bodies'
import { closingPoint } from '@/lib/domain/fold/closing-point'
import { OUTBOX_VERSION } from '@/lib/domain/outbox/exchange'
import { openDesk } from '@/lib/server/commands/open-desk'
import { openSitePack } from '@/lib/server/commands/open-site-pack'
import { receiveEntries } from '@/lib/server/commands/receive-entries'
import { waitingEntry } from '@/test/capture/outbox/waiting-entry'
import { keyOfDevice } from './key-of-device'
import { packIn } from './pack-in'
import { ACCEPTANCE, deskOf } from './walk-to-closing'
import { openWorld, type World } from './world'

const stream = 'repair:R-1' as StreamId
const device = { id: 'tab-9', clockOffsetMs: 0 }
const at = (minute: number) => `2026-05-12T09:${String(minute).padStart(2, '0')}:00+01:00`
const minuteOf = (minute: number) => Date.parse(at(minute))
let world: World
let key: KeptKey

beforeAll(async () => {
  world = await openWorld()
  key = (await keyOfDevice(world, device.id)).key
}, 60_000)
afterAll(() => world.store.remove())

const takePack = async () => packIn(await openSitePack(await world.of('QI'), { repair: stream }), parseSitePack)
const stateNow = async () => (await openDesk(await world.of('QI'))).stateOf(stream)

function entryOf({ id = v7(), command, input }: Captured, minute: number): OutboxEntry {
  const capturedAt = minuteOf(minute)
  const owner = { tenant: world.store.tenant, person: 'QI' }
  return waitingEntry({
    ...owner,
    id,
    seq: minute,
    command,
    input: { ...input, device },
    capturedAt,
    madeOffline: true,
  })
}

/** What QI has before them on the tablet at the closing point. */
function closingOn(pack: SitePack, entries: OutboxEntry[], minute: number) {
  const nowMs = minuteOf(minute)
  const { state } = stateOnSite(pack, entries, nowMs)
  const attempt = closingPoint(state)?.current
  if (!attempt) throw new Error('no closing point')
  const seen = attemptAsSigned(pack, entries, attempt, { nowMs, device: device.id })
  const { point } = attempt
  const place: SigningPlace = { ...seen, stream, point, attempt: attempt.attempt, device, isOffline: true }
  return { state, seen, place }
}

async function accept(pack: SitePack, minute: number, unseen = 0): Promise<OutboxEntry> {
  const { seen, place } = closingOn(pack, [], minute)
  const heads = seen.heads.map((head) => ({ ...head, length: head.length - unseen }))
  const body = REPAIR_BODIES.accepted.parse({ ...ACCEPTANCE, heads })
  return entryOf(await acceptHere(key, place, { id: v7(), signatureId: v7(), body }), minute)
}

async function send(entries: readonly OutboxEntry[], person = 'QI') {
  const answered = await receiveEntries(await world.of(person), {
    v: OUTBOX_VERSION,
    tenant: world.store.tenant,
    person,
    entries: entries.map(({ id, command, input }) => ({ id, command, input, photos: [], madeOffline: true })),
  })
  if (!answered.ok) throw new Error(JSON.stringify(answered.error))
  return answered.value
}

test('an acceptance is refused while a point is not released, and nothing of it is kept', async () => {
  await world.store.setNow(at(3))
  const early = await accept(await takePack(), 2)
  expect(await send([early])).toMatchObject([
    { kind: 'refused', refusal: { code: 'not-decided', why: 'not-released', detail: ['05', '06', '19'] } },
  ])
  expect((await stateNow())?.acceptance).toBeNull()
}, 60_000)

test('an acceptance of one signed for another, or under another meaning or point, is not taken', async () => {
  await world.store.setNow(at(5))
  await deskOf(world, stream).walkToClosing()
  await world.store.setNow(at(8))
  const pack = await takePack()
  const one = await accept(pack, 7)
  const other = await accept(pack, 7)
  const signature = other.input.signature
  expect(await send([{ ...one, input: { ...one.input, signature } }])).toMatchObject([
    { kind: 'refused', refusal: { code: 'invalid', fields: { signature: ['is not a signature of this acceptance'] } } },
  ])
  const { place, seen } = closingOn(pack, [], 7)
  const body = REPAIR_BODIES.accepted.parse({ ...ACCEPTANCE, heads: seen.heads })
  const ids = { id: v7(), signatureId: v7() }
  const elsewhere = entryOf(await acceptHere(key, { ...place, point: '06' }, { ...ids, body }), 7)
  expect(await send([elsewhere])).toMatchObject([{ kind: 'refused', refusal: { code: 'invalid' } }])
  const changed = { ...one.input, body: { ...(one.input.body as object), restrictions: [] } }
  expect(await send([{ ...one, input: changed }])).toMatchObject([
    { kind: 'refused', refusal: { code: 'covers-differ' } },
  ])
  expect((await stateNow())?.acceptance).toBeNull()
}, 60_000)

test('an acceptance on a device folds there as in the record; the client signs it there, and it arrives once', async () => {
  const pack = await takePack()
  const accepted = await accept(pack, 10)
  const [fact] = factsOfEntry(accepted)
  if (!fact) throw new Error('the entry becomes no fact')
  const { place } = closingOn(pack, [accepted], 11)
  const covers = [{ fact: fact.id, sha256: digestOnDevice(fact) }]
  const said = { id: v7(), meaning: 'accepted', role: 'inspector' } as const
  const beside = entryOf(await signHere(key, { by: 'key' }, { ...place, covers, photos: [] }, said), 11)
  const here = closingOn(pack, [accepted, beside], 12).state
  expect(here.acceptance?.fact).toMatchObject({ id: accepted.id, observedAt: at(10), observedBy: 'QI' })

  await world.store.setNow(at(30))
  const first = await send([accepted, beside])
  expect(first).toMatchObject([{ kind: 'received' }, { kind: 'received' }])
  expect(await send([accepted, beside])).toEqual(first)
  const there = await stateNow()
  expect(there?.conflicts).toEqual([])
  expect(there?.acceptance).toEqual(here.acceptance)
  expect(there?.status).toBe(here.status)
  expect(there?.acceptance?.signatures.map((one) => one.state)).toEqual(['stands', 'stands'])
}, 60_000)

test('an acceptance that did not know all of the record is not kept; what it met is noted for an inspector', async () => {
  await world.store.setNow(at(40))
  const stale = await accept(await takePack(), 35, 1)
  const [answer] = await send([stale])
  expect(answer).toMatchObject({ kind: 'refused', refusal: { code: 'heads-moved', moved: [{ stream }] } })
  const { acceptance, conflicts } = (await stateNow()) ?? { acceptance: null, conflicts: [] }
  expect(acceptance?.fact.id).not.toBe(stale.id)
  expect(conflicts).toMatchObject([{ text: expect.stringContaining('accept-on-device') }])
}, 60_000)
