import { createReadStream } from 'node:fs'
import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { Readable } from 'node:stream'
import * as z from 'zod'
import { StreamId, streamName } from '@/lib/domain/facts/fact'
import { done, refused } from '@/lib/domain/result'
import { issuedFile } from '@/lib/server/dossier/issued-file'
import { writeReviewDossier } from '@/lib/server/dossier/write-review-dossier'
import { command } from './command'
import { decisionGround } from './decision-ground'

/** A file on its way out. */
export type OutgoingFile = { body: ReadableStream; fileName: string; sizeBytes: number }

const Repair = z
  .string()
  .max(110)
  .transform((name) => `repair:${name}`)
  .pipe(StreamId)
const OpenIssued = z.strictObject({ repair: Repair, revision: z.coerce.number().int().min(0).max(999) })
const OpenReview = z.strictObject({ repair: Repair })

/** The stored file of an issued revision, as frozen: `{ repair, revision }`. Refuses `invalid`, `not-found`, `not-allowed`. */
export const openIssuedDossier = command(OpenIssued, async (desk, form) => {
  const ground = await decisionGround(desk, form.repair, 'read record')
  if (!ground.ok) return ground
  const file = await issuedFile(desk.store, desk.actor.tenant, form.repair, form.revision)
  if (!file) return refused({ code: 'not-found' })
  const { photos } = desk.store
  const path = photos.path?.(file.sha256)
  const bytes = path ? null : await photos.read(file.sha256)
  if (!path && !bytes) return refused({ code: 'not-found' })
  const body = path ? createReadStream(path) : Readable.from([bytes])
  return done<OutgoingFile>({
    body: Readable.toWeb(body) as ReadableStream,
    fileName: file.fileName,
    sizeBytes: file.sizeBytes,
  })
})

/** A copy for review, built now and issued nowhere: `{ repair }`. Refuses `invalid`, `not-found`, `not-allowed`. */
export const openReviewDossier = command(OpenReview, async (desk, form) => {
  const ground = await decisionGround(desk, form.repair, 'read record')
  if (!ground.ok) return ground
  const folder = await mkdtemp(join(tmpdir(), 'underwrap-review-'))
  const forget = () => rm(folder, { recursive: true, force: true })
  const path = join(folder, 'review.pdf')
  const built = await writeReviewDossier(desk.store, desk.actor.tenant, form.repair, path).catch(
    async (cause: unknown) => {
      await forget()
      throw cause
    },
  )
  if (!built.ok) {
    await forget()
    return built
  }
  const file = createReadStream(path)
  file.once('close', () => void forget())
  return done<OutgoingFile>({
    body: Readable.toWeb(file) as ReadableStream,
    fileName: `${streamName(form.repair)}-for-review.pdf`,
    sizeBytes: built.value.sizeBytes,
  })
})
