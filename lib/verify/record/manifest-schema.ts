import * as z from 'zod'
import { FactId, Sha256, StreamId } from '@/lib/domain/facts/fact'
import { HashBase64 } from '@/lib/domain/facts/key-bodies'
import { PointNo } from '@/lib/domain/specification'
import { Moment } from '@/lib/domain/time'
import { TenantName } from '@/lib/evidence/origin'

const Count = z.int().nonnegative()
const Size = z.int().positive()
const Word = z.string().max(600)
const AtPoint = { point: z.string().max(8), attempt: Size }

/** The manifest of a dossier, version 1: exactly these members. @source lib/evidence/FORMAT.md section 5.3 */
export const Manifest = z.strictObject({
  v: z.literal(1),
  kind: z.enum(['issue', 'for review']),
  repair: StreamId,
  revision: Count.nullable(),
  purpose: Word.nullable(),
  tenant: TenantName,
  organisation: Word,
  isDemo: z.boolean(),
  asOf: z.strictObject({ moment: Moment, size: Size }),
  rules: Word,
  template: Word,
  verifier: Word,
  vkey: z.string().max(400),
  streams: z.array(z.strictObject({ stream: StreamId, length: Size })).max(20_000),
  files: z.array(z.strictObject({ name: Word, sha256: Sha256, sizeBytes: Count })).max(10),
  photos: z
    .array(
      z.strictObject({
        fact: FactId,
        original: z.strictObject({ sha256: Sha256, sizeBytes: Size, mediaType: Word }),
        rendition: z.strictObject({ sha256: Sha256, sizeBytes: Size, widthPx: Size, heightPx: Size }),
        object: Size.nullable(),
        printed: z.enum(['yes', 'missing']),
      }),
    )
    .max(20_000),
  likeness: z
    .array(
      z.strictObject({
        photo: FactId,
        other: z.strictObject({ repair: StreamId, fact: FactId, point: PointNo }),
        kind: z.enum(['exact copy', 'near copy']),
      }),
    )
    .max(20_000),
  verdicts: z
    .array(z.strictObject({ ...AtPoint, criterion: Word, verdict: z.enum(['pass', 'fail', 'not proven']) }))
    .max(50_000),
  states: z.array(z.strictObject({ ...AtPoint, state: Word })).max(10_000),
  earlier: z
    .array(
      z.strictObject({
        revision: Count,
        sha256: Sha256,
        size: Size.nullable(),
        root: HashBase64.nullable(),
        consistency: z.array(HashBase64).max(128).nullable(),
      }),
    )
    .max(1000),
})
export type Manifest = z.infer<typeof Manifest>
