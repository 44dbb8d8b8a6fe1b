import * as z from 'zod'
import { Sha256 } from '@/lib/domain/facts/fact'

/** Names that a backup's files may have; nothing else is written or read. */
export const FileName = z
  .string()
  .regex(/^(tables\/[a-z_]{1,60}\.jsonl|objects\/[0-9a-f]{64}|keys\/[A-Za-z0-9][A-Za-z0-9._-]{0,80})$/)

/** What a backup is, as `manifest.json` says in canonical JSON. `missing` are cited objects that were gone or damaged when it was made. */
export const BackupManifest = z.strictObject({
  v: z.literal(1),
  kind: z.literal('underwrap backup'),
  storeId: z.string().regex(/^[0-9a-f]{16}$/),
  madeAt: z.string().max(40),
  heads: z
    .array(
      z.strictObject({ tenant: z.string().max(120), checkpoint: z.string().max(16_384), vkey: z.string().max(400) }),
    )
    .max(1000),
  files: z.array(z.strictObject({ name: FileName, sha256: Sha256, sizeBytes: z.int().nonnegative() })).max(2_000_000),
  missing: z.array(Sha256).max(2_000_000),
})
export type BackupManifest = z.infer<typeof BackupManifest>
export type BackupFileEntry = BackupManifest['files'][number]
