import fc from 'fast-check'
import type { DeviceStorage } from '@/lib/capture/outbox/device-storage'
import { createMemoryOutboxStore } from '@/lib/capture/outbox/memory-outbox-store'
import { createOutbox } from '@/lib/capture/outbox/outbox'
import { createPageLocks, type OutboxLocks } from '@/lib/capture/outbox/outbox-locks'
import type { OutboxStore } from '@/lib/capture/outbox/outbox-store'
import type { Outbox } from '@/lib/capture/outbox/outbox-terms'
import { isDecision, type OutboxCommand } from '@/lib/domain/outbox/exchange'
import { createPretendServer, type Fate, PageGone, type PretendServer, type Weather } from './pretend-server'

const OWNER = { tenant: 'tenant-a', person: 'T1' }
const START_MS = Date.parse('2026-05-12T08:00:00Z')

/** What the model knows: every capture that the device said it kept, in order, and what a person set aside. */
export type Model = { captured: { id: string; stream: string }[]; setAside: Set<string> }
export type Device = {
  weather: Weather
  room: { bytesAtMost: number }
  store: OutboxStore
  server: PretendServer
  locks: { current: OutboxLocks }
  open(): Outbox
  tabs: { one: Outbox; two: Outbox }
}

type Command = fc.AsyncCommand<Model, Device>

/** A device with two tabs over one storage, which outlives them. */
export function makeDevice(): Device {
  const weather: Weather = { isOnline: true, isSignedIn: true, isVersionOld: false, fates: [], nowMs: START_MS }
  const room = { bytesAtMost: 50_000_000 }
  const store = createMemoryOutboxStore(room)
  const storage: DeviceStorage = { persist: async () => true, estimate: async () => null }
  const locks = { current: createPageLocks() }
  const open = () =>
    createOutbox({
      store,
      owner: OWNER,
      deviceId: 'tab-1',
      storage,
      locks: { run: (name, work) => locks.current.run(name, work) },
      nowMs: () => weather.nowMs++,
      isOnline: () => weather.isOnline,
    })
  return { weather, room, store, server: createPretendServer(weather), locks, open, tabs: { one: open(), two: open() } }
}

/** What must hold after every step: each capture is on the device or set aside or on the server, once, with its photos before it, in the order of its stream. */
export async function check(model: Model, device: Device): Promise<void> {
  const entries = await device.tabs.one.entries()
  const byId = new Map(entries.map((one) => [one.id, one]))
  const wrongs = [...device.server.wrongs]
  if (byId.size !== entries.length) wrongs.push('an entry is doubled on the device')
  for (const { id } of model.captured) {
    const entry = byId.get(id)
    if (!entry) wrongs.push(`${id} is lost from the device`)
    if (entry?.state === 'sent' && !device.server.kept.has(id)) wrongs.push(`${id} is called sent and is not there`)
    if (entry?.state === 'set aside' && !model.setAside.has(id)) wrongs.push(`${id} was dropped in silence`)
    for (const sha256 of entry && entry.state !== 'sent' ? entry.photos : [])
      if (!(await device.store.photo(OWNER, sha256))) wrongs.push(`${id}: a photo is lost`)
  }
  const last = new Map<string, { observation: number; any: number }>()
  for (const entry of entries) {
    const kept = device.server.kept.get(entry.id)
    if (!kept) continue
    for (const sha256 of entry.photos) if (!device.server.whole.has(sha256)) wrongs.push(`${entry.id} before its photo`)
    // what was observed may overtake a decision that was refused, and nothing else overtakes
    const before = last.get(kept.stream) ?? { observation: 0, any: 0 }
    const isDeciding = isDecision(entry.command)
    if (kept.position <= (isDeciding ? before.any : before.observation))
      wrongs.push(`${entry.id} overtook another of its stream`)
    last.set(kept.stream, {
      observation: isDeciding ? before.observation : kept.position,
      any: Math.max(before.any, kept.position),
    })
  }
  for (const id of device.server.kept.keys()) if (!byId.has(id)) wrongs.push(`${id} was never captured`)
  if (wrongs.length > 0) throw new Error(wrongs.join('; '))
}

function step(name: string, run: (model: Model, device: Device) => Promise<void> | void): Command {
  return {
    check: () => true,
    toString: () => name,
    async run(model, device) {
      await run(model, device)
      await check(model, device)
    },
  }
}

const capture = (command: OutboxCommand, stream: string, photoBytes: number, kind: 'good' | 'bad' | 'damaged photo') =>
  step(`capture(${command}, ${stream}, ${photoBytes}, ${kind})`, async (model, device) => {
    const text = `${kind === 'damaged photo' ? 'damaged' : 'picture'} ${model.captured.length % 3} `
    const blob = new Blob([text, new Uint8Array(photoBytes)])
    const kept = await device.tabs.one.capture({
      command,
      input: { stream, body: { no: model.captured.length }, ...(kind === 'bad' ? { isBad: true } : {}) },
      photos: photoBytes > 0 || kind === 'damaged photo' ? [blob] : [],
    })
    if (kept.ok) model.captured.push({ id: kept.value.id, stream })
    else if (kept.error.code !== 'storage-full') throw new Error(kept.error.code)
  })

/** Send from a tab. A page that is gone opens anew, and the browser frees its lock. */
async function send(device: Device, tabs: readonly ('one' | 'two')[]): Promise<void> {
  const sendings = await Promise.allSettled(tabs.map((tab) => device.tabs[tab].send(device.server.exchange)))
  const isGone = sendings.some((one) => one.status === 'rejected' && one.reason instanceof PageGone)
  for (const one of sendings) if (one.status === 'rejected' && !(one.reason instanceof PageGone)) throw one.reason
  if (isGone) reload(device)
}

function reload(device: Device): void {
  device.locks.current = createPageLocks()
  device.tabs.one = device.open()
  device.tabs.two = device.open()
}

const deal = (way: 'try again' | 'send again' | 'set aside') =>
  step(way, async (model, device) => {
    const entry = (await device.tabs.one.entries()).find((one) => one.state === 'refused')
    if (!entry) return
    const outbox = device.tabs.one
    if (way === 'try again') await outbox.tryAgain(entry.id)
    if (way === 'set aside' && (await outbox.setAside(entry.id, 'entered twice')).ok) model.setAside.add(entry.id)
    if (way !== 'send again') return
    const { isBad: _was, ...input } = entry.input
    const mended = entry.photos.length > 0 ? { photos: [new Blob([`picture taken anew for ${entry.id}`])] } : {}
    const again = await outbox.sendAgain(entry.id, { input, ...mended })
    if (!again.ok) return
    model.setAside.add(entry.id)
    model.captured.push({ id: again.value.id, stream: entry.input.stream })
  })

const weather = (change: Partial<Weather>) =>
  step(JSON.stringify(change), (_model, device) => void Object.assign(device.weather, change))

const STREAMS = ['repair:R-1', 'repair:R-2', 'batch:B-1']
const FATES: Fate[] = ['lost', 'reply lost', 'page gone before', 'page gone after']

const captures = fc
  .tuple(
    fc.constantFrom('record-point' as const, 'record-point' as const, 'submit-point' as const),
    fc.constantFrom(...STREAMS),
    fc.constantFrom(0, 0, 0, 10, 10, 1_100_000),
    fc.constantFrom('good' as const, 'good' as const, 'good' as const, 'bad' as const, 'damaged photo' as const),
  )
  .map(([command, stream, bytes, kind]) => capture(command, stream, bytes, kind))

const room = (bytes: number) =>
  step(`room ${bytes}`, (_model, device) => {
    device.room.bytesAtMost = bytes
  })

/** Every command of the model; what is done most stands twice. */
export const COMMANDS: fc.Arbitrary<Command>[] = [
  captures,
  captures,
  captures,
  fc.constant(step('send', (_model, device) => send(device, ['one']))),
  fc.constant(step('send from both tabs', (_model, device) => send(device, ['one', 'two']))),
  fc.constant(step('reload', (_model, device) => reload(device))),
  fc
    .array(fc.constantFrom(...FATES), { minLength: 1, maxLength: 4 })
    .map((fates) => step(fates.join(', '), (_model, device) => void device.weather.fates.push(...fates))),
  fc.boolean().map((isOnline) => weather({ isOnline })),
  fc.boolean().map((isSignedIn) => weather({ isSignedIn })),
  fc.boolean().map((isVersionOld) => weather({ isVersionOld })),
  fc.constantFrom(0, 1_200_000, 50_000_000).map(room),
  fc.constantFrom('try again' as const, 'send again' as const, 'set aside' as const).map(deal),
]
