import type { EntryAnswer, EntryRefusal, PieceStanding, SentEntry } from '@/lib/domain/outbox/exchange'
import type { Moment } from '@/lib/domain/time'
import type { OutboxOwner } from './outbox-entry'

/**
 * Why nothing could be sent now, each a state of its own. Entries stay where they are: `signed-out` until the person signs in again, `other-person` until the person whose
 * entries they are does, `version-too-old` until this device has the present app.
 */
export type Standstill =
  | { kind: 'no-network' }
  | { kind: 'signed-out' }
  | { kind: 'other-person' }
  | { kind: 'version-too-old' }
  | { kind: 'version-too-new' }
  | { kind: 'server-trouble'; status: number; code: string | null }

export type EntriesReply =
  | { kind: 'answered'; answers: EntryAnswer[]; serverNow: Moment; sentMs: number; gotMs: number }
  | Standstill

export type PieceReply =
  | { kind: 'stands'; standing: PieceStanding }
  | { kind: 'refused'; refusal: EntryRefusal }
  | Standstill

/** The way to the server. Replies that do not come are `no-network`; nothing throws for what a network does. */
export interface OutboxExchange {
  /** Send entries in order; with none it only asks for the time and whether this person is signed in. */
  send(owner: OutboxOwner, entries: readonly SentEntry[]): Promise<EntriesReply>
  /** How much of a photo the server holds. */
  standingOf(sha256: string): Promise<PieceReply>
  /** Send the piece that begins at `offset` of a photo of `sizeBytes`. */
  putPiece(piece: { sha256: string; offset: number; sizeBytes: number; bytes: Blob }): Promise<PieceReply>
}
