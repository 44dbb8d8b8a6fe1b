import { randomUUID } from 'node:crypto'
import { rename, rm } from 'node:fs/promises'
import { basename, dirname, join } from 'node:path'
import type { StreamId } from '@/lib/domain/facts/fact'
import { done, type Result, refused } from '@/lib/domain/result'
import { type BuiltDossier, buildDossier, type DossierProgress } from '@/lib/dossier/build-dossier'
import type { Store, TenantId } from '@/lib/server/store/store'
import { gatherDossier } from './gather-dossier'

/**
 * Write a copy for review of a repair's dossier as it stands now. It issues nothing. The file appears whole under `outPath`, replacing an earlier one.
 * Refuses `not-found`. @throws when the disk refuses or stored bytes are broken
 */
export async function writeReviewDossier(
  store: Store,
  tenant: TenantId,
  repair: StreamId,
  outPath: string,
  onProgress?: (progress: DossierProgress) => void,
): Promise<Result<BuiltDossier, { code: 'not-found' }>> {
  const gathered = await gatherDossier(store, tenant, repair, { kind: 'for review' }, store.now())
  if (!gathered) return refused({ code: 'not-found' })
  const unfinished = join(/*turbopackIgnore: true*/ dirname(outPath), `.${basename(outPath)}.${randomUUID()}`)
  try {
    const built = await buildDossier(gathered.input, store.photos, unfinished, onProgress)
    await rename(/*turbopackIgnore: true*/ unfinished, /*turbopackIgnore: true*/ outPath)
    return done(built)
  } finally {
    await rm(/*turbopackIgnore: true*/ unfinished, { force: true })
  }
}
