import { v7 } from 'uuid'
import { createDeviceStorage } from './device-storage'
import { openIndexedOutboxStore } from './indexed-outbox-store'
import { clockIn } from './kept-clock'
import { createMemoryOutboxStore } from './memory-outbox-store'
import { createOutbox } from './outbox'
import type { OutboxOwner } from './outbox-entry'
import { createPageLocks, createWebLocks } from './outbox-locks'
import type { OutboxStore } from './outbox-store'
import type { DeviceStated, Outbox } from './outbox-terms'

const CHANNEL = 'underwrap-outbox'
const DEVICE = 'device-id'

/** Where this browser keeps what waits, whosever it is, and the device as facts name it. */
export type BrowserStore = { store: OutboxStore; deviceId: string }

/** Open where this browser keeps what waits: IndexedDB, else memory. */
export async function openBrowserStore(): Promise<BrowserStore> {
  const opened = await openIndexedOutboxStore()
  const store = opened.ok ? opened.value : createMemoryOutboxStore()
  return { store, deviceId: await deviceIn(store) }
}

/**
 * This browser's outbox for a person; `room()` tells when it is in memory alone. Works in a page and in a service worker; tabs hear of each other's changes.
 * @param nowMs the clock by which facts are captured
 */
export function browserOutbox({ store, deviceId }: BrowserStore, owner: OutboxOwner, nowMs: () => number): Outbox {
  const channel = new BroadcastChannel(CHANNEL)
  return createOutbox({
    store,
    owner,
    deviceId,
    storage: createDeviceStorage(navigator.storage),
    locks: navigator.locks ? createWebLocks(navigator.locks) : createPageLocks(),
    nowMs,
    isOnline: () => navigator.onLine,
    signal: {
      tell: () => channel.postMessage('changed'),
      hear(listener) {
        channel.addEventListener('message', listener)
        return () => channel.removeEventListener('message', listener)
      },
    },
  })
}

/** This browser as facts name it, whoever works at it; null where it keeps nothing. */
export async function deviceHere(): Promise<DeviceStated | null> {
  const opened = await openIndexedOutboxStore()
  if (!opened.ok) return null
  try {
    const id = await deviceIn(opened.value)
    return { id, clockOffsetMs: (await clockIn(opened.value))?.offsetMs ?? null }
  } finally {
    opened.value.close()
  }
}

/** The id kept in a store, made on its first use. */
async function deviceIn(store: OutboxStore): Promise<string> {
  const known = await store.note(DEVICE)
  if (typeof known === 'string') return known
  const made = `device-${v7()}`
  await store.keepNote(DEVICE, made)
  return made
}
