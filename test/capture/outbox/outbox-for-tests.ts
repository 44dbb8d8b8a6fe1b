import { createMemoryOutboxStore } from '@/lib/capture/outbox/memory-outbox-store'
import { createOutbox } from '@/lib/capture/outbox/outbox'
import { createPageLocks } from '@/lib/capture/outbox/outbox-locks'
import type { OutboxStore } from '@/lib/capture/outbox/outbox-store'
import type { Outbox, OutboxGround } from '@/lib/capture/outbox/outbox-terms'
import { NOW } from '@/test/commands/world'

/** An outbox of a person of tenant A, whose clock stands at the world's time. */
export function outboxOf(person: string, more: Partial<OutboxGround> & { store?: OutboxStore } = {}): Outbox {
  return createOutbox({
    store: createMemoryOutboxStore(),
    owner: { tenant: 'tenant-a', person },
    deviceId: 'phone-1',
    storage: { persist: async () => true, estimate: async () => null },
    locks: createPageLocks(),
    nowMs: () => Date.parse(NOW),
    isOnline: () => true,
    ...more,
  })
}

/** What a form would enqueue: a remark at a point of a repair. */
export function remarkAt(repair: string, text: string, more: object = {}) {
  return {
    command: 'record-point' as const,
    input: {
      stream: `repair:${repair}`,
      body: { point: '06', attempt: 1, record: { type: 'remark', text } },
      observedAt: NOW,
      enteredAt: NOW,
      ...more,
    },
  }
}

/** What the camera would enqueue. */
export function photoAt(repair: string, caption: string, bytes: Uint8Array) {
  const input = {
    stream: `repair:${repair}`,
    body: { point: '06', attempt: 1, caption },
    observedAt: NOW,
    enteredAt: NOW,
  }
  return { command: 'attach-photo' as const, input, photos: [new Blob([new Uint8Array(bytes)])] }
}
