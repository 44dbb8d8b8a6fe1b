import * as z from 'zod'
import { FactId, Sha256 } from '../facts/fact'
import { Moment } from '../time'

/** Version of what a device and the server say to each other about entries of the outbox. */
export const OUTBOX_VERSION = 1
/** The oldest version that the server still takes; an older device keeps its entries until it has the present app. */
export const OLDEST_OUTBOX_VERSION = 1
export const ENTRIES_AT_MOST = 50
export const REQUEST_BYTES_AT_MOST = 1_000_000
/** Photos go up in pieces of at most this many bytes. */
export const PIECE_BYTES_AT_MOST = 1_048_576
const PHOTOS_AT_MOST = 20

/**
 * Commands that may wait in an outbox. None asks for a password, for a password is never kept on a device: without a network a signature and a release are made with the device's own key.
 */
const OBSERVATIONS = [
  'record-point',
  'correct-record',
  'attach-photo',
  'annotate-photo',
  'note-photo-disagrees',
  'note-event',
  'record-material-used',
  'check-instrument',
  'check-clock',
  'register-device',
  'raise-nonconformance',
  'open-repair',
] as const
const DECISIONS = [
  'open-attempt',
  'mark-not-applicable',
  'choose-governs',
  'settle-conflict',
  'submit-point',
  'refuse-release',
  'withdraw-release',
  'sign-on-device',
  'release-on-device',
  'accept-on-device',
] as const
export const OUTBOX_COMMANDS = [...OBSERVATIONS, ...DECISIONS] as const
export type OutboxCommand = (typeof OUTBOX_COMMANDS)[number]
const DECIDING: ReadonlySet<OutboxCommand> = new Set(DECISIONS)

/** Whether a command decides on what is recorded; the others say what was observed. */
export function isDecision(command: OutboxCommand): boolean {
  return DECIDING.has(command)
}

/** Whether an entry that was refused holds back a later one of its stream. What was observed never waits for a decision. */
export function holdsBack(refused: OutboxCommand, later: OutboxCommand): boolean {
  return !isDecision(refused) || isDecision(later)
}

/** One entry on its way: the command's own input without its id, the photos it cites, and whether it was made without a network. */
export const SentEntry = z.lazy(() =>
  z.strictObject({
    id: FactId,
    command: z.enum(OUTBOX_COMMANDS),
    input: z.record(z.string(), z.unknown()),
    photos: z.array(Sha256).max(PHOTOS_AT_MOST),
    madeOffline: z.boolean(),
  }),
)
export type SentEntry = z.infer<typeof SentEntry>

/** What a device sends. Entries are parsed one by one, so that a bad one is refused alone. */
export const OutboxRequest = z.lazy(() =>
  z.strictObject({
    v: z.int(),
    tenant: z.string().min(1).max(100),
    person: z.string().min(1).max(61),
    entries: z.array(z.unknown()).max(ENTRIES_AT_MOST),
  }),
)
export type OutboxRequest = z.infer<typeof OutboxRequest>

/** A refusal as it comes over the wire: a code and its facts. */
export const EntryRefusal = z.looseObject({ code: z.string().min(1).max(60) })
export type EntryRefusal = z.infer<typeof EntryRefusal>

/**
 * What became of one entry: `received` with its first receipt, however often it was sent; `refused` with a named answer; `held` behind an entry of its stream that
 * was refused; `photo-missing` when the server has not the bytes of a photo it cites.
 */
export const EntryAnswer = z.lazy(() =>
  z.discriminatedUnion('kind', [
    z.strictObject({
      kind: z.literal('received'),
      id: z.string(),
      receipt: z.strictObject({ receivedAt: Moment, position: z.int().positive() }),
    }),
    z.strictObject({ kind: z.literal('refused'), id: z.string(), refusal: EntryRefusal }),
    z.strictObject({ kind: z.literal('held'), id: z.string(), behind: z.string() }),
    z.strictObject({ kind: z.literal('photo-missing'), id: z.string(), sha256: Sha256 }),
  ]),
)
export type EntryAnswer = z.infer<typeof EntryAnswer>

/** The server's answer to a request, with its time, by which a device measures its own clock. */
export const OutboxReply = z.lazy(() => z.object({ ok: z.literal(true), now: Moment, value: z.array(EntryAnswer) }))

/** How much of a photo the server holds of this person's sending. */
export const PieceStanding = z.lazy(() => z.strictObject({ offset: z.int().nonnegative(), isWhole: z.boolean() }))
export type PieceStanding = z.infer<typeof PieceStanding>

/** Refusals of the exchange itself, beside those of the commands. */
export type ExchangeRefusal =
  | { code: 'version-too-old'; oldest: number; newest: number }
  | { code: 'version-too-new'; oldest: number; newest: number }
  | { code: 'piece-misplaced'; offset: number }
  | { code: 'pieces-full'; maxBytes: number }
