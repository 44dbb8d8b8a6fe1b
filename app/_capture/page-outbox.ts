'use client'
import { clockAheadOf } from '@/lib/capture/clock-ahead'
import { deviceTitle } from '@/lib/capture/outbox/device-title'
import { createFetchExchange } from '@/lib/capture/outbox/fetch-exchange'
import { noteDevice } from '@/lib/capture/outbox/note-device'
import { type BrowserStore, browserOutbox, openBrowserStore } from '@/lib/capture/outbox/open-browser-outbox'
import type { OutboxEntry, OutboxOwner } from '@/lib/capture/outbox/outbox-entry'
import type { OutboxStore } from '@/lib/capture/outbox/outbox-store'
import type { Captured, CaptureRefusal, DeviceStated, Outbox } from '@/lib/capture/outbox/outbox-terms'
import type { SendOutcome } from '@/lib/capture/outbox/send-entries'
import type { Result } from '@/lib/domain/result'
import { momentOf, showOffset } from '@/lib/domain/time'
import { alone } from './alone'

export const SYNC_TAG = 'underwrap-outbox'
/** With nothing to send, the server is asked for its time no more often than this. */
const CLOCK_KNOWN_MS = 10 * 60_000

/** The outbox of one person in this page, with the way to the server. */
export type PageOutbox = {
  owner: OutboxOwner
  outbox: Outbox
  store: OutboxStore
  nowMs(): number
  /** The device as a fact names it. In a demonstration or test its clock is the server's own, and no offset is stated. */
  device(): Promise<DeviceStated>
  /** Keep a statement on this device, then send what waits without being waited for. */
  capture(captured: Captured): Promise<Result<OutboxEntry, CaptureRefusal>>
  send(): Promise<SendOutcome>
}

const opened = new Map<string, Promise<PageOutbox>>()
let here: Promise<BrowserStore> | null = null

/** Where this page keeps what waits, opened once; it need not know yet for whom. */
export function pageStore(): Promise<BrowserStore> {
  here ??= openBrowserStore()
  return here
}

/** The clock by which this page captures: the device's own, or in a demonstration or test the one that the server last told. */
export function pageNowMs(): number {
  return Date.now() + (clockAheadOf(localStorage) ?? 0)
}

/** Open the outbox of a person, once a page. */
export function pageOutbox({ tenant, person }: OutboxOwner): Promise<PageOutbox> {
  const key = `${tenant} ${person}`
  const known = opened.get(key) ?? open({ tenant, person })
  opened.set(key, known)
  return known
}

async function open(owner: OutboxOwner): Promise<PageOutbox> {
  const place = await pageStore()
  const { store, deviceId } = place
  const outbox = browserOutbox(place, owner, pageNowMs)
  const exchange = createFetchExchange(undefined, '', pageNowMs)
  const note = () =>
    alone('underwrap-device', () =>
      noteDevice({
        outbox,
        store,
        tenant: owner.tenant,
        title: deviceTitle(navigator.userAgent, deviceId),
        now: momentOf(pageNowMs(), showOffset(-new Date().getTimezoneOffset())),
        followsServer: clockAheadOf(localStorage) !== null,
      }),
    )
  const send = async () => {
    const outcome = await outbox.send(exchange)
    // only after a contact: before it, neither the clock is measured nor is anyone there to be told
    return outcome.kind === 'sent' && (await note()) > 0 ? outbox.send(exchange) : outcome
  }
  const device = async () => {
    const stated = await outbox.device()
    return clockAheadOf(localStorage) === null ? stated : { ...stated, clockOffsetMs: null }
  }
  return {
    owner,
    outbox,
    store,
    nowMs: pageNowMs,
    device,
    send,
    async capture(captured) {
      const kept = await outbox.capture({ ...captured, device: captured.device ?? (await device()) })
      if (kept.ok) {
        void send()
        void askToSync()
      }
      return kept
    },
  }
}

/** Send now, whenever the page comes to the front or the network comes back, and each minute while something waits. @returns stops it */
export function keepSending(page: PageOutbox, after: (outcome: SendOutcome) => void = () => undefined): () => void {
  const send = async () => {
    if (document.visibilityState !== 'visible') return
    const { waiting, clock } = await page.outbox.status()
    const isClockKnown = clock !== null && Math.abs(page.nowMs() - clock.measuredAt) < CLOCK_KNOWN_MS
    if (waiting > 0 || !isClockKnown) after(await page.send())
  }
  const again = async () => {
    if ((await page.outbox.status()).waiting > 0) await send()
  }
  void send()
  const tick = setInterval(() => void again(), 60_000)
  for (const name of ['online', 'focus'] as const) window.addEventListener(name, send)
  document.addEventListener('visibilitychange', send)
  return () => {
    clearInterval(tick)
    for (const name of ['online', 'focus'] as const) window.removeEventListener(name, send)
    document.removeEventListener('visibilitychange', send)
  }
}

/** Ask the browser to send in the background once there is a network, where it can. */
async function askToSync(): Promise<void> {
  const worker = await navigator.serviceWorker?.getRegistration()
  const sync = worker && 'sync' in worker ? (worker.sync as { register(tag: string): Promise<void> }) : null
  // refused in private windows and by policy: the page sends by itself all the same
  await sync?.register(SYNC_TAG).catch(() => undefined)
}
