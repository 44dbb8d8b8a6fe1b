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

/**
 * Open this browser's outbox for a person: in IndexedDB, else in memory, which `room()` then tells. Works in a page and in a service worker; tabs hear of each other's changes.
 * @param nowMs the clock by which facts are captured
 */
export async function openBrowserOutbox(
  owner: OutboxOwner,
  nowMs: () => number = () => Date.now(),
): Promise<{ outbox: Outbox; store: OutboxStore; deviceId: string }> {
  const opened = await openIndexedOutboxStore()
  const store = opened.ok ? opened.value : createMemoryOutboxStore()
  const deviceId = await deviceIn(store)
  const channel = new BroadcastChannel(CHANNEL)
  const outbox = createOutbox({
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
  return { outbox, store, deviceId }
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
