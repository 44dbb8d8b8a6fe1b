import { createReadStream } from 'node:fs'
import { join } from 'node:path'
import type { StreamId } from '@/lib/domain/facts/fact'
import { streamName, streamOf } from '@/lib/domain/facts/fact'
import type { Fact, FactOf } from '@/lib/domain/facts/fact-kinds'
import { ofKind } from '@/lib/domain/fold/order-facts'
import { done, type Result, refused } from '@/lib/domain/result'
import { instantOf, type Moment } from '@/lib/domain/time'
import { photosOf } from '@/lib/dossier/dossier-context'
import { canonicalBytes } from '@/lib/evidence/canonical-bytes'
import { sniffType } from '@/lib/photo/sniff-type'
import { LOG_KEY_STREAM } from '@/lib/server/log/key-facts'
import { loadStream } from '@/lib/server/store/load-stream'
import type { Store, TenantId } from '@/lib/server/store/store'
import { gatherDossier } from './gather-dossier'
import { fileOfBytes, fileOfObject, type PackageFile } from './package-files'
import { readingsCsv } from './readings-csv'
import { writeReviewDossier } from './write-review-dossier'

/** What a package holds, in the order written, and the digests of originals and certificates that the store no longer has. */
export type GatheredPackage = { files: PackageFile[]; missing: string[]; asOf: Moment; fileName: string }

/**
 * Gather the package of a repair: an issued revision as frozen, or with `revision` null a copy for review of the record as it stands, written into `folder`; with the original
 * photos, certificates and readings that belong to it, the log key that its checkpoint is signed with, and an index (lib/evidence/FORMAT.md, section 8). Refuses `not-found`.
 * @throws what `writeReviewDossier` throws
 */
export async function gatherPackage(
  store: Store,
  tenant: TenantId,
  repair: StreamId,
  revision: number | null,
  folder: string,
): Promise<Result<GatheredPackage, { code: 'not-found' }>> {
  const issue = revision === null ? null : await issueOf(store, tenant, repair, revision)
  if (revision !== null && !issue) return refused({ code: 'not-found' })
  const dossier = issue
    ? await fileOfObject(store.photos, issue.fact.body.sha256, () => 'dossier.pdf')
    : await reviewFile(store, tenant, repair, join(/*turbopackIgnore: true*/ folder, 'dossier.pdf'))
  const at = issue?.fact.body.asOf ?? store.now()
  const gathered = await gatherDossier(store, tenant, repair, { kind: 'for review' }, at, issue?.receivedAt)
  if (!dossier || !gathered) return refused({ code: 'not-found' })
  const { state, facts } = gathered.input
  const files: PackageFile[] = [dossier, fileOfBytes('readings.csv', new TextEncoder().encode(readingsCsv(state)))]
  const missing: string[] = []
  const originals = photosOf(gathered.input).map(({ photo }) => photo.fact.body.photo)
  const wanted = [
    ...originals.map(({ sha256, mediaType }) => ({ sha256, name: `originals/${sha256}.${EXTENSIONS[mediaType]}` })),
    ...certificatesOf(facts).map((sha256) => ({ sha256, name: null })),
  ]
  const seen = new Set<string>()
  for (const { sha256, name } of wanted) {
    if (seen.has(sha256)) continue
    seen.add(sha256)
    const file = await fileOfObject(
      store.photos,
      sha256,
      (start) => name ?? `certificates/${sha256}.${extensionOf(start)}`,
    )
    if (file) files.push(file)
    else missing.push(sha256)
  }
  const vkey = await keyAt(store, tenant, issue?.receivedAt)
  if (vkey) files.push(fileOfBytes('log-key.txt', new TextEncoder().encode(`${vkey}\n`)))
  const index = files
    .map(({ name, sha256, sizeBytes }) => ({ name, sha256, sizeBytes }))
    .sort((a, b) => (a.name < b.name ? -1 : 1))
  return done({
    files: [...files, fileOfBytes('index.json', canonicalBytes(index))],
    missing: missing.sort(),
    asOf: state.asOf,
    fileName: `${streamName(repair)}-${revision === null ? 'for-review' : `rev-${revision}`}.zip`,
  })
}

const EXTENSIONS = { 'image/jpeg': 'jpg', 'image/png': 'png', 'image/webp': 'webp', 'image/heic': 'heic' } as const

async function issueOf(
  store: Store,
  tenant: TenantId,
  repair: StreamId,
  revision: number,
): Promise<{ fact: FactOf<'dossier-issued'>; receivedAt: Moment | undefined } | null> {
  const { facts, receipts } = await loadStream(store, tenant, streamOf('dossier', streamName(repair)))
  const fact = ofKind(facts, 'dossier-issued').find(
    (one) => one.body.repair === repair && one.body.revision === revision,
  )
  return fact ? { fact, receivedAt: receipts.get(fact.id)?.receivedAt } : null
}

async function reviewFile(store: Store, tenant: TenantId, repair: StreamId, path: string): Promise<PackageFile | null> {
  const written = await writeReviewDossier(store, tenant, repair, path)
  if (!written.ok) return null
  const { sha256, sizeBytes } = written.value
  const open = () => createReadStream(/*turbopackIgnore: true*/ path)
  return { name: 'dossier.pdf', sha256, sizeBytes, isPacked: false, open }
}

/** Digests of certificate files that facts cite. */
function certificatesOf(facts: readonly Fact[]): string[] {
  return facts.flatMap((fact) => {
    if (fact.kind === 'batch-received') return fact.body.certificateFile ? [fact.body.certificateFile] : []
    return 'file' in fact.body && fact.body.file ? [fact.body.file] : []
  })
}

function extensionOf(start: Uint8Array): string {
  if (Buffer.from(start.subarray(0, 5)).toString('latin1') === '%PDF-') return 'pdf'
  const type = sniffType(start)
  return type === 'jpeg' ? 'jpg' : (type ?? 'bin')
}

/** The log key that signs now, or that signed when an issue was received. */
async function keyAt(store: Store, tenant: TenantId, until: Moment | undefined): Promise<string | null> {
  const { facts, receipts } = await loadStream(store, tenant, LOG_KEY_STREAM)
  const taken = ofKind(facts, 'log-key-taken').filter((fact) => {
    const receivedAt = receipts.get(fact.id)?.receivedAt
    return until === undefined || (receivedAt !== undefined && instantOf(receivedAt) <= instantOf(until))
  })
  return taken.at(-1)?.body.vkey ?? null
}
