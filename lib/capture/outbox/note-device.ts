import * as z from 'zod'
import type { Moment } from '@/lib/domain/time'
import { type ClockStanding, DRIFT_MS } from './device-clock'
import type { OutboxStore } from './outbox-store'
import type { Outbox } from './outbox-terms'

/** Offset of this device's clock that the record was told last, with how sure it was. */
const ClockTold = z.object({ offsetMs: z.int(), uncertainMs: z.int() })
const NOTHING_TOLD = { offsetMs: 0, uncertainMs: 0 }

export type DeviceNoting = {
  outbox: Outbox
  store: OutboxStore
  tenant: string
  /** How a person recognises the device. */
  title: string
  now: Moment
  /** In a demonstration or test the device follows the server's clock: it has no error of its own. */
  followsServer: boolean
}

/**
 * What a device says of itself at a contact, through the outbox: that it is there, once; and how far its clock is off, when that is more than what it told last, which is once for each drift. Facts carry the
 * offset of the contact before them; the check tells it for those that were captured since. What the server refuses of it is set aside with the reason: no person made it, and none need deal with it.
 * @returns how many statements were added, to be sent
 */
export async function noteDevice(noting: DeviceNoting): Promise<number> {
  const { outbox, store, tenant, title, now } = noting
  const entries = await outbox.entries()
  for (const one of entries)
    if (one.state === 'refused' && (one.command === 'register-device' || one.command === 'check-clock'))
      await outbox.setAside(
        one.id,
        `said by the device itself; the server refused it: ${one.refusal?.code ?? 'unknown'}`,
      )
  const stated = await outbox.device()
  const stream = `device:${stated.id}`
  const device = noting.followsServer ? { ...stated, clockOffsetMs: null } : stated
  const times = { observedAt: now, enteredAt: now }
  let count = 0
  const registered = `registered ${tenant}`
  if ((await store.note(registered)) !== true) {
    const isSaid = entries.some((one) => one.command === 'register-device')
    const kept =
      isSaid ||
      (await outbox.capture({ command: 'register-device', input: { stream, body: { title }, ...times }, device })).ok
    if (kept) await store.keepNote(registered, true)
    count += kept && !isSaid ? 1 : 0
  }
  const { clock } = await outbox.status()
  const told = `clock told ${tenant}`
  const before = ClockTold.catch(NOTHING_TOLD).parse(await store.note(told))
  if (clock && !noting.followsServer && hasMoved(clock, before)) {
    const body = {
      offsetMs: clock.offsetMs,
      remark: `Measured at a contact, to ${clock.uncertainMs} ms; told before: ${before.offsetMs} ms.`,
    }
    const kept = await outbox.capture({ command: 'check-clock', input: { stream, body, ...times }, device })
    if (kept.ok) await store.keepNote(told, { offsetMs: clock.offsetMs, uncertainMs: clock.uncertainMs })
    count += kept.ok ? 1 : 0
  }
  return count
}

/** Whether the clock is off by another amount than was told, by more than both measurements explain. */
function hasMoved(clock: ClockStanding, told: z.infer<typeof ClockTold>): boolean {
  return Math.abs(clock.offsetMs - told.offsetMs) > clock.uncertainMs + told.uncertainMs + DRIFT_MS
}
