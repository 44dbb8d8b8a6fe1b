'use client'
import { clockAheadOf, forgetClockAhead } from '@/lib/capture/clock-ahead'
import type { OutboxStatus } from '@/lib/capture/outbox/outbox-terms'
import { openSiteStore } from '@/lib/capture/site/site-store'
import type { PersonId } from '@/lib/domain/facts/fact'
import { keepSending, pageOutbox } from './page-outbox'
import { readNow } from './read-now'

/** Who is signed in at this device, and whose clock counts. */
export type DeviceUser = { tenant: string; person: PersonId; name: string; clockKind: 'real' | 'demo' | 'test' }

const WORKER = '/serwist/sw.js'
/** How often a demonstration or test is asked for its clock before it is followed from the next page only. */
const TRIES = 10

/**
 * Note on this device who works here, keep its screens for work without a network, and send what waits. Repairs that another person pinned are forgotten; what they captured stays until they sign in
 * again. @returns stops it
 */
export async function followDevice(user: DeviceUser, tell: (status: OutboxStatus) => void): Promise<() => void> {
  if (user.clockKind === 'real') forgetClockAhead(localStorage)
  // by the device's own clock everything here would be months away
  else if (!(await isClockTold(user.clockKind))) return () => undefined
  const { tenant, person, name } = user
  const store = await openSiteStore()
  const before = await store?.owner()
  if (before && (before.tenant !== tenant || before.person !== person)) await store?.clear()
  await store?.keepOwner({ tenant, person, name, clockAheadMs: clockAheadOf(localStorage) ?? 0 })
  store?.close()
  // refused by policy or in a private window: then there are no screens without a network, and nothing else is lost
  await navigator.serviceWorker?.register(WORKER, { scope: '/' }).catch(() => undefined)
  const page = await pageOutbox(user)
  const deaf = page.outbox.watch(tell)
  const still = keepSending(page)
  return () => {
    deaf()
    still()
  }
}

async function isClockTold(kind: DeviceUser['clockKind']): Promise<boolean> {
  for (let tries = 0; tries < TRIES; tries += 1) {
    await readNow('+00:00', kind)
    if (clockAheadOf(localStorage) !== null) return true
  }
  return false
}

/** Forget who works here and every pinned repair, at signing out. What waits in the outbox stays for its person. */
export async function leaveDevice(): Promise<void> {
  const store = await openSiteStore()
  await store?.clear()
  store?.close()
  forgetClockAhead(localStorage)
}
