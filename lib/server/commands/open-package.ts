import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { Readable } from 'node:stream'
import * as z from 'zod'
import { StreamId } from '@/lib/domain/facts/fact'
import { done } from '@/lib/domain/result'
import { gatherPackage } from '@/lib/server/dossier/gather-package'
import { packFiles } from '@/lib/server/dossier/pack-files'
import { command } from './command'
import { decisionGround } from './decision-ground'

const OpenPackage = z.strictObject({
  repair: z
    .string()
    .max(110)
    .transform((name) => `repair:${name}`)
    .pipe(StreamId),
  revision: z.union([z.literal('review'), z.coerce.number().int().min(0).max(999)]),
})

/**
 * The package of an issued revision, or with `review` of the record as it stands, as a ZIP that is made while it is sent: `{ repair, revision }`.
 * Refuses `invalid`, `not-found`, `not-allowed`.
 */
export const openPackage = command(OpenPackage, async (desk, form) => {
  const ground = await decisionGround(desk, form.repair, 'read record')
  if (!ground.ok) return ground
  const folder = await mkdtemp(join(tmpdir(), 'underwrap-package-'))
  const forget = (): Promise<void> => rm(folder, { recursive: true, force: true })
  try {
    const revision = form.revision === 'review' ? null : form.revision
    const gathered = await gatherPackage(desk.store, desk.actor.tenant, form.repair, revision, folder)
    if (!gathered.ok) {
      await forget()
      return gathered
    }
    const zip = packFiles(gathered.value)
    zip.once('close', () => void forget())
    return done({ body: Readable.toWeb(zip) as ReadableStream, fileName: gathered.value.fileName })
  } catch (cause) {
    await forget()
    throw cause
  }
})
