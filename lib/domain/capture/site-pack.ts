import * as z from 'zod'
import { FactId, PersonId, Sha256, StreamId } from '../facts/fact'
import type { Result } from '../result'
import { ROLES } from '../roles'
import { PointNo } from '../specification'
import { Moment } from '../time'
import { type PackOf, type PackRefusal, parsePack } from './parse-pack'

export const SITE_PACK_VERSION = 1
/** A pack beyond this is refused: a device would not keep a handful of them. */
export const SITE_PACK_BYTES_AT_MOST = 24_000_000

const Received = z.strictObject({ receivedAt: Moment, receivedBy: PersonId, position: z.int().positive() })

/** The pack's own fields; its facts are parsed one by one. */
const SitePackForm = z.strictObject({
  v: z.literal(SITE_PACK_VERSION),
  tenant: z.string().min(1),
  person: PersonId,
  /** Roles of the person in the repair's project on the day it was taken. */
  roles: z.array(z.enum(ROLES)),
  stream: StreamId,
  number: z.string(),
  takenAt: Moment,
  utcOffset: z.string(),
  clockKind: z.enum(['real', 'demo', 'test']),
  lateAfterMinutes: z.number(),
  /** Facts of the repair and of every stream that its fold reads. */
  facts: z.array(z.unknown()),
  /** Facts of every batch, instrument and person that a form may name, where they are not among `facts`. */
  stores: z.array(z.unknown()),
  receipts: z.record(FactId, Received),
  digests: z.record(FactId, Sha256),
  /** Who may sign in the repair's project on the day it was taken. Absent in packs taken before devices signed: nobody signs from those. */
  signers: z
    .array(
      z.strictObject({
        person: PersonId,
        name: z.string(),
        roles: z.array(z.enum(ROLES)),
        hasAccount: z.boolean(),
        approves: z.boolean(),
      }),
    )
    .optional(),
  likeness: z.array(
    z.strictObject({
      photo: FactId,
      other: z.strictObject({ repair: StreamId, fact: FactId, point: PointNo }),
      kind: z.enum(['exact copy', 'near copy']),
    }),
  ),
})

/** A repair as a device takes it to where there is no network: the exact facts, so that it folds there as it does on the server. */
export type SitePack = PackOf<z.infer<typeof SitePackForm>>

/** Parse a repair's pack. Refuses as `parsePack`. */
export function parseSitePack(json: unknown): Result<SitePack, PackRefusal> {
  return parsePack(SitePackForm, json)
}
