import { v7 } from 'uuid'
import { afterAll, beforeAll, expect, test } from 'vitest'
import type { OutboxEntry } from '@/lib/capture/outbox/outbox-entry'
import type { Captured } from '@/lib/capture/outbox/outbox-terms'
import { attemptAsSigned } from '@/lib/capture/signing/attempt-as-signed'
import type { KeptKey } from '@/lib/capture/signing/key-ring'
import { releaseHere, type SigningPlace, signHere } from '@/lib/capture/signing/sign-on-device'
import { idleKeys, signersHere } from '@/lib/capture/signing/signers-here'
import { stateOnSite } from '@/lib/capture/site/site-state'
import { parseSitePack, type SitePack } from '@/lib/domain/capture/site-pack'
import type { StreamId } from '@/lib/domain/facts/fact'
import { OUTBOX_VERSION } from '@/lib/domain/outbox/exchange'
import { endSigningKey } from '@/lib/server/commands/end-signing-key'
import { openDesk } from '@/lib/server/commands/open-desk'
import { openSitePack } from '@/lib/server/commands/open-site-pack'
import { receiveEntries } from '@/lib/server/commands/receive-entries'
import { waitingEntry } from '@/test/capture/outbox/waiting-entry'
import { keyOfDevice } from './key-of-device'
import { packIn } from './pack-in'
import { openWorld, type World } from './world'
import { PERMIT } from './world-facts'

const stream = 'repair:R-1' as StreamId
const device = { id: 'tab-7', clockOffsetMs: 0 }
const at = (minute: number) => `2026-05-12T09:${String(minute).padStart(2, '0')}:00+01:00`
let world: World
let key: KeptKey
const entries: OutboxEntry[] = []

beforeAll(async () => {
  world = await openWorld()
  key = (await keyOfDevice(world, 'tab-7')).key
}, 60_000)
afterAll(() => world.store.remove())

async function takePack(): Promise<SitePack> {
  return packIn(await openSitePack(await world.of('L1'), { repair: stream }), parseSitePack)
}

/** Keep a statement as the outbox of L1's tablet does. */
function keep({ id = v7(), command, input }: Captured, minute: number): void {
  entries.push(
    waitingEntry({
      tenant: world.store.tenant,
      person: 'L1',
      id,
      seq: entries.length + 1,
      command,
      input: { ...input, device },
      capturedAt: Date.parse(at(minute)),
      madeOffline: true,
    }),
  )
}

const stated = (minute: number) => ({ observedAt: at(minute), enteredAt: at(minute) })

test('what is signed and released on a device folds there as it will in the record, and arrives without a conflict', async () => {
  const pack = await takePack()
  const signers = signersHere(pack, [key])
  expect(signers.find((one) => one.person === 'QI')).toMatchObject({ by: 'key', roles: ['inspector'] })
  expect(signers.find((one) => one.person === 'KP')).toMatchObject({ by: 'in person', roles: ['client'] })
  expect(signers.some((one) => one.person === 'L1')).toBe(false)
  const folded = (minute: number) => {
    const { state } = stateOnSite(pack, entries, Date.parse(at(minute)))
    const attempt = state.points.find((one) => one.no === '05')?.current
    if (!attempt) throw new Error('no point 05')
    return attempt
  }
  const seenAt = (minute: number) =>
    attemptAsSigned(pack, entries, folded(minute), { nowMs: Date.parse(at(minute)), device: device.id })
  const placeOf = (seen: ReturnType<typeof seenAt>): SigningPlace => ({
    stream,
    point: '05',
    attempt: 1,
    covers: seen.covers,
    photos: seen.photos,
    at: seen.at,
    device,
    isOffline: true,
  })
  keep(
    { command: 'record-point', input: { stream, body: { point: '05', attempt: 1, record: PERMIT }, ...stated(5) } },
    5,
  )
  // a clock set back: the decision is never dated before what the device entered
  expect(seenAt(2).at).toBe(at(5))
  const said = { id: v7(), meaning: 'measured', role: 'inspector' } as const
  keep(await signHere(key, { by: 'key' }, placeOf(seenAt(6)), said), 6)
  const own = pack.facts.filter((fact) => fact.stream === stream).length
  expect(seenAt(7).heads).toEqual([{ stream, length: own + 2 }])
  const submitted = { point: '05', attempt: 1, heads: seenAt(7).heads }
  keep({ command: 'submit-point', input: { stream, body: submitted, ...stated(7) } }, 7)
  const seen = seenAt(8)
  expect(seen.covers.length).toBe(1)
  const given = { id: v7(), signatureId: v7(), party: 'inspector', scope: { kind: 'whole' }, remark: '' } as const
  keep(await releaseHere(key, { by: 'key' }, placeOf(seen), { ...given, heads: seen.heads }), 8)
  expect(seenAt(9).heads).toEqual([{ stream, length: own + 5 }])
  const here = folded(9)
  expect(here.signatures.map((one) => one.state)).toEqual(['stands', 'stands'])
  expect(here.releases).toMatchObject([{ state: 'valid', fact: { observedBy: 'QI', observedAt: at(8) } }])

  // the server's clock is behind the device's: what it entered before it submitted is seen all the same
  await world.store.setNow(at(4))
  const answered = await receiveEntries(await world.of('L1'), {
    v: OUTBOX_VERSION,
    tenant: world.store.tenant,
    person: 'L1',
    entries: entries.map(({ id, command, input }) => ({ id, command, input, photos: [], madeOffline: true })),
  })
  expect(answered).toMatchObject({ ok: true, value: entries.map(() => ({ kind: 'received' })) })
  await world.store.setNow(at(30))
  const state = await (await openDesk(await world.of('QI'))).stateOf(stream)
  expect(state?.conflicts).toEqual([])
  const there = state?.points.find((one) => one.no === '05')?.current
  expect(there?.releases.map((one) => one.fact)).toEqual(here.releases.map((one) => one.fact))
  expect(there?.signatures).toEqual(here.signatures)
}, 60_000)

test('with a pack from before devices signed nobody signs', async () => {
  const { signers: _signers, ...old } = await takePack()
  expect(signersHere(old, [key])).toEqual([])
})

test('a key that was made after the pack was taken, or was ended in it, signs nothing and is named with why', async () => {
  const { pack: old, ended } = await packsAround('tablet lost in the sump')
  const newer = (await keyOfDevice(world, 'tab-8')).key
  expect(idleKeys(old, [key, newer])).toEqual({ newer: [newer.name], ended: [] })
  expect(signersHere(old, [key]).filter((one) => one.by === 'key')).toHaveLength(1)
  expect(idleKeys(ended, [key])).toEqual({ newer: [], ended: [key.name] })
  expect(signersHere(ended, [key])).toEqual([])
})

/** The repair as taken along before and after the key was ended in the record. */
async function packsAround(reason: string) {
  const pack = await takePack()
  const end = { stream: 'device:tab-7', body: { key: key.fact, reason } }
  expect(await endSigningKey(await world.of('QI'), end)).toMatchObject({ ok: true })
  return { pack, ended: await takePack() }
}
