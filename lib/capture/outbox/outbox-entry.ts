import type { EntryRefusal, OutboxCommand } from '@/lib/domain/outbox/exchange'

/** Whose entries: on a shared device each person's stay apart, and go up under that person's session only. */
export type OutboxOwner = { tenant: string; person: string }

/** A command's input without its id and device, which the outbox gives: `{ stream, body, observedAt, enteredAt, late?, heads? }`. */
export type EntryInput = { stream: string; body: unknown; [field: string]: unknown }

/** `sending` is only what another moment left so: whoever holds the lock sends such an entry again. `set aside` was dealt with by a person, with a reason. */
export type EntryState = 'waiting' | 'sending' | 'refused' | 'set aside' | 'sent'

/** One captured statement on its way to the record. `id` is the id of the fact that it becomes; `seq` its place in the order of capture. */
export type OutboxEntry = OutboxOwner & {
  id: string
  seq: number
  command: OutboxCommand
  input: EntryInput
  /** SHA-256 of the photos that it cites; their bytes lie beside the entries. */
  photos: string[]
  /** Milliseconds since the epoch by the device's clock. */
  capturedAt: number
  madeOffline: boolean
  tries: number
  state: EntryState
  refusal: EntryRefusal | null
  /** Why a person set it aside, or as which entry it was sent again. */
  settled: { at: number; reason: string; againAs: string | null } | null
  /** The entry in whose place this one was sent again. */
  replaces: string | null
  receipt: { receivedAt: string; position: number } | null
}

/** An entry that is neither on the server nor set aside. */
export function isOpen(entry: OutboxEntry): boolean {
  return entry.state !== 'sent' && entry.state !== 'set aside'
}

/** Order of sending: as captured; an entry sent again keeps the place of the one it replaces. */
export function inOrder(a: OutboxEntry, b: OutboxEntry): number {
  return a.seq - b.seq || a.capturedAt - b.capturedAt || (a.id < b.id ? -1 : 1)
}
