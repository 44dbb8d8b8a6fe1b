import type { OutboxCommand } from '@/lib/domain/outbox/exchange'
import type { Result } from '@/lib/domain/result'
import type { ClockStanding } from './device-clock'
import type { DeviceStorage, Room } from './device-storage'
import type { OutboxCount } from './outbox-count'
import type { EntryInput, OutboxEntry, OutboxOwner } from './outbox-entry'
import type { OutboxExchange } from './outbox-exchange'
import type { OutboxLocks } from './outbox-locks'
import type { KeepRefusal, OutboxStore } from './outbox-store'
import type { SendOutcome } from './send-entries'

/** What an outbox stands on. `signal` tells other tabs that something changed and hears it from them. */
export type OutboxGround = {
  store: OutboxStore
  owner: OutboxOwner
  deviceId: string
  storage: DeviceStorage
  locks: OutboxLocks
  nowMs(): number
  isOnline(): boolean
  signal?: { tell(): void; hear(listener: () => void): () => void }
}

export type OutboxStatus = OutboxCount & { last: SendOutcome | null; clock: ClockStanding | null }

/** Which device stated a fact, and how far its clock was ahead at the last contact. */
export type DeviceStated = { id: string; clockOffsetMs: number | null }

/** `id` and `device` are given only when the same statement may have reached the server already, so that it is received once. */
export type Captured = {
  command: OutboxCommand
  input: EntryInput
  photos?: readonly Blob[]
  id?: string
  device?: DeviceStated
}
export type CaptureRefusal = KeepRefusal | { code: 'storage-nearly-full'; freeBytes: number; neededBytes: number }
export type DealRefusal = CaptureRefusal | { code: 'not-refused' } | { code: 'reason-missing' }

export type Outbox = {
  /** The device as a fact captured now names it. */
  device(): Promise<DeviceStated>
  /** How safely this device keeps, to be shown before capture. */
  room(): Promise<Room>
  /** Keep one statement with its photos until the server has it. It is kept when this settles with ok; refuses before anything could be lost. */
  capture(captured: Captured): Promise<Result<OutboxEntry, CaptureRefusal>>
  entries(): Promise<OutboxEntry[]>
  status(): Promise<OutboxStatus>
  /** Entries, status and device as they stand at one moment, in one read. */
  standing(): Promise<{ entries: OutboxEntry[]; status: OutboxStatus; device: DeviceStated }>
  /** Hear the status now and after every change, also those of other tabs. @returns stops it */
  watch(listener: (status: OutboxStatus) => void): () => void
  /** Send what waits; `busy` when another tab does. */
  send(exchange: OutboxExchange): Promise<SendOutcome>
  /** A refused entry goes again as it is: what stood against it is gone. */
  tryAgain(id: string): Promise<Result<OutboxEntry, DealRefusal>>
  /** A refused entry goes again changed, under a new id, in the place of the old one, which stays readable. */
  sendAgain(
    id: string,
    changed: Pick<Captured, 'input' | 'photos' | 'device'>,
  ): Promise<Result<OutboxEntry, DealRefusal>>
  /** A refused entry is not sent; it stays readable on this device with the reason. */
  setAside(id: string, reason: string): Promise<Result<OutboxEntry, DealRefusal>>
}
