import type { Result } from '@/lib/domain/result'
import type { OutboxEntry, OutboxOwner } from './outbox-entry'

/** Photo bytes under their digest. */
export type KeptPhoto = { sha256: string; blob: Blob }

/** Why a device did not keep an entry. Nothing of it is kept then. */
export type KeepRefusal = { code: 'storage-full' } | { code: 'storage-refused'; detail: string } | { code: 'id-taken' }

/** The device's storage failed under an entry that it holds already. What the server received is not sent twice, so that the next try may go over it again. */
export class OutboxStoreLost extends Error {
  readonly code = 'outbox-store-lost'
  constructor(cause: unknown) {
    super('The storage of this device failed', { cause })
    this.name = 'OutboxStoreLost'
  }
}

/** An entry to be added; without a place of its own it goes behind all others. */
export type NewEntry = Omit<OutboxEntry, 'seq'> & { seq: number | null }

/** Change of an entry; null leaves it as it is. */
export type EntryChange = (entry: OutboxEntry) => OutboxEntry | null

/** Where entries and photos lie on a device. Every method is all or nothing and settles once kept. @throws OutboxStoreLost, except in `add` */
export interface OutboxStore {
  readonly keeps: 'over a reload' | 'until this page closes'
  /** Keep an entry with its photos, and change another with it. The same entry again changes nothing; another under its id is `id-taken`. */
  add(
    entry: NewEntry,
    photos: readonly KeptPhoto[],
    also?: { id: string; change: EntryChange },
  ): Promise<Result<OutboxEntry, KeepRefusal>>
  /** Entries of one person, in order of sending. */
  entries(owner: OutboxOwner): Promise<OutboxEntry[]>
  /** Entries of one person and a note, as both stand at one moment: one read, where a page waits for it. */
  entriesWith(owner: OutboxOwner, key: string): Promise<{ entries: OutboxEntry[]; note: unknown }>
  change(id: string, change: EntryChange): Promise<OutboxEntry | null>
  photo(owner: OutboxOwner, sha256: string): Promise<Blob | null>
  dropPhoto(owner: OutboxOwner, sha256: string): Promise<void>
  /** Forget an entry that was sent. An entry in any other state stays. */
  forgetSent(id: string): Promise<void>
  note(key: string): Promise<unknown>
  keepNote(key: string, value: unknown): Promise<void>
  close(): void
}

/** Whether two entries say the same: then one of them was a repetition. */
export function isSameEntry(a: NewEntry | OutboxEntry, b: NewEntry | OutboxEntry): boolean {
  const said = ({ tenant, person, command, input, photos }: NewEntry | OutboxEntry) =>
    JSON.stringify([tenant, person, command, input, photos])
  return said(a) === said(b)
}
