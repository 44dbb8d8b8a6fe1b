import * as z from 'zod'
import { Moment } from '../time'

/** Kinds of stream; a stream's id is `kind:name`, unique within a tenant: `repair:MD-0042`, `batch:RS-884`. */
export const STREAM_KINDS = [
  'repair',
  'batch',
  'instrument',
  'person',
  'specification',
  'plan',
  'nonconformance',
  'project',
  'dossier',
  'register',
  'device',
  'key',
] as const
export type StreamKind = (typeof STREAM_KINDS)[number]

/** Id of a stream. */
export const StreamId = z
  .string()
  .max(120)
  .regex(new RegExp(`^(${STREAM_KINDS.join('|')}):[A-Za-z0-9][A-Za-z0-9._/-]*$`), 'a stream id such as repair:MD-0042')
  .brand('StreamId')
export type StreamId = z.infer<typeof StreamId>

/** Id of a fact: a UUIDv7 made on the device. */
export const FactId = z.uuid().brand('FactId')
export type FactId = z.infer<typeof FactId>

/** SHA-256, lower-case hex. */
export const Sha256 = z
  .string()
  .regex(/^[0-9a-f]{64}$/)
  .brand('Sha256')
export type Sha256 = z.infer<typeof Sha256>

/** Id of a person: the name part of its stream `person:NAME`. Permanent; never re-used. */
export const PersonId = z
  .string()
  .regex(/^[A-Za-z0-9][A-Za-z0-9._-]{0,60}$/)
  .brand('PersonId')
export type PersonId = z.infer<typeof PersonId>

/** Why a fact was entered after the event, and from what. */
export const Late = z.lazy(() =>
  z.strictObject({
    reason: z.string().trim().min(3).max(300),
    source: z.enum(['memory', 'paper tally', 'instrument store', 'other']),
  }),
)

/**
 * One immutable statement. `observedAt` is when it was so, `enteredAt` when it was keyed; both keep their UTC offset.
 * `body` is typed by `kind` in fact-kinds.ts. The bytes are canonical JSON (RFC 8785), hashed as written.
 */
export const FactEnvelope = z.lazy(() =>
  z.strictObject({
    v: z.literal(1),
    id: FactId,
    stream: StreamId,
    kind: z.string().regex(/^[a-z][a-z-]{2,40}$/),
    observedAt: Moment,
    observedBy: PersonId,
    enteredAt: Moment,
    enteredBy: PersonId,
    late: Late.optional(),
    device: z.strictObject({ id: z.string().min(1).max(60), clockOffsetMs: z.int().nullable() }),
    body: z.unknown(),
  }),
)

/** What the server adds on receipt. It feeds the trail and late marks, never a verdict. */
export type Receipt = { receivedAt: Moment; receivedBy: PersonId; position: number }

/** Name of the stream within its kind: `MD-0042` of `repair:MD-0042`. */
export function streamName(stream: StreamId): string {
  return stream.slice(stream.indexOf(':') + 1)
}

/** Kind of a stream. */
export function streamKind(stream: StreamId): StreamKind {
  return stream.slice(0, stream.indexOf(':')) as StreamKind
}

/** The stream id of a kind and name. @throws when the name cannot be one */
export function streamOf(kind: StreamKind, name: string): StreamId {
  return StreamId.parse(`${kind}:${name}`)
}
