import { v7 } from 'uuid'
import { createDeviceStorage } from './device-storage'
import { openIndexedOutboxStore } from './indexed-outbox-store'
import { createMemoryOutboxStore } from './memory-outbox-store'
import { createOutbox } from './outbox'
import type { OutboxOwner } from './outbox-entry'
import { createPageLocks, createWebLocks } from './outbox-locks'
import type { OutboxStore } from './outbox-store'
import type { Outbox } from './outbox-terms'

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
  const known = await store.note(DEVICE)
  const deviceId = typeof known === 'string' ? known : `device-${v7()}`
  if (deviceId !== known) await store.keepNote(DEVICE, deviceId)
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
