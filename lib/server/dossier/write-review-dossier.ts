import { randomUUID } from 'node:crypto'
import { rename, rm } from 'node:fs/promises'
import { basename, dirname, join } from 'node:path'
import type { StreamId } from '@/lib/domain/facts/fact'
import { done, type Result, refused } from '@/lib/domain/result'
import { type BuiltDossier, buildDossier, type DossierProgress } from '@/lib/dossier/build-dossier'
import type { DossierInput } from '@/lib/dossier/dossier-input'
import { MACHINE } from '@/lib/server/log/machine'
import type { Store, TenantId } from '@/lib/server/store/store'
import { gatherDossier } from './gather-dossier'
import { sealDossier } from './seal-dossier'

/**
 * Write a copy for review of a repair's dossier as it stands now, sealed and signed as an issue is. It issues nothing. The file appears whole under `outPath`, replacing an
 * earlier one. Refuses `not-found`.
 * @throws when the record moved at every try, the disk refuses, stored bytes are broken, the log or the certificate cannot sign, or the time stamp that was asked for is not given
 */
export async function writeReviewDossier(
  store: Store,
  tenant: TenantId,
  repair: StreamId,
  outPath: string,
  onProgress?: (progress: DossierProgress) => void,
): Promise<Result<BuiltDossier, { code: 'not-found' }>> {
  const input = await sealedInput(store, tenant, repair)
  if (!input.ok) return input
  const unfinished = join(/*turbopackIgnore: true*/ dirname(outPath), `.${basename(outPath)}.${randomUUID()}`)
  try {
    const built = await buildDossier(input.value, store.photos, unfinished, onProgress)
    await rename(/*turbopackIgnore: true*/ unfinished, /*turbopackIgnore: true*/ outPath)
    return done(built)
  } finally {
    await rm(/*turbopackIgnore: true*/ unfinished, { force: true })
  }
}

const TRIES = 6

async function sealedInput(
  store: Store,
  tenant: TenantId,
  repair: StreamId,
): Promise<Result<DossierInput, { code: 'not-found' }>> {
  for (let attempt = 1; attempt <= TRIES; attempt += 1) {
    const gathered = await gatherDossier(store, tenant, repair, { kind: 'for review' }, store.now())
    if (!gathered) return refused({ code: 'not-found' })
    // nobody decides anything by a copy: should the log or its certificate be new, it is the machine that says so
    const seal = await sealDossier(store, tenant, gathered, MACHINE)
    if (seal !== 'moved') return done({ ...gathered.input, seal })
  }
  throw new Error('The record moved each time while it was gathered; ask for the copy again.')
}
