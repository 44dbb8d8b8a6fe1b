import { hexOf } from '@/lib/evidence/digest'
import type { ByteSource } from './byte-source'
import type { CheckOptions, Found } from './check-options'
import { checkSignature, type Signed } from './cms/check-signature'
import type { Ledger } from './ledger'
import { isNamed, type PdfObject } from './pdf/parse-object'
import { type AttachmentRefs, findAttachments, readAttachments } from './pdf/read-attachments'
import { type Layout, readLayout } from './pdf/read-layout'
import { readSignatureField, type SignatureField } from './pdf/signature-field'
import { readObject, walkObjects } from './pdf/walk-objects'
import type { PhotoObject } from './record/check-photos'
import { checkRecord } from './record/check-record'
import type { AttachmentDigests } from './record/read-manifest'

const HASHES_AT_ONCE = 8

/**
 * Check a dossier from its bytes: layout, signature over all of it, attachments, then the record within. The file is read once from start to end; memory grows with the
 * number of objects and facts, not with the photos.
 * @throws CheckEnded when nothing more can be made out, NoWebCrypto
 */
export async function verifyDossier(
  source: ByteSource,
  ledger: Ledger,
  found: Found,
  options: CheckOptions,
): Promise<void> {
  const layout = await readLayout(source, ledger)
  const catalog = (await readObject(source, layout, layout.root))?.value
  if (!catalog || !isNamed(catalog, 'Type', 'Catalog')) ledger.fatal('catalog-malformed', `object ${layout.root}`)
  const field = await readSignatureField(source, layout, catalog, ledger)
  const refs = await findAttachments(source, layout, catalog, ledger)
  const { digest, photos } = await walk(source, layout, field, refs, ledger, options)
  ledger.prove('layout', 'The file is built exactly as a dossier is, and nothing is appended to it.', 0)
  const signed = await checkFileSignature(field, digest, ledger)
  const attachments = await readAttachments(source, layout, refs, ledger)
  const digests: AttachmentDigests = {}
  for (const { name } of refs) {
    const bytes = attachments[name]
    if (bytes) digests[name] = { sha256: hexOf(await options.hasher.digest(bytes)), sizeBytes: bytes.length }
  }
  checkRecord(
    { attachments, digests, photos, certificate: signed?.certificate ?? null, stampedAt: signed?.stampedAt ?? null },
    ledger,
    found,
    options.trusted,
  )
}

async function checkFileSignature(
  field: SignatureField | null,
  digest: Uint8Array,
  ledger: Ledger,
): Promise<Signed | null> {
  if (!field?.der) return null
  const before = ledger.breakCount
  const signed = await checkSignature(field.der, digest, ledger)
  if (signed) {
    const { subject, sha256, isSelfSigned } = signed.certificate
    ledger.prove(
      'signature',
      `Not one byte was changed since it was signed by the certificate ${subject} (SHA-256 ${sha256})${isSelfSigned ? ', which its holder made and vouches for alone' : ''}.`,
      before,
    )
    if (signed.stampedAt)
      ledger.prove('time-stamp', `A time-stamp service says that the signature existed at ${signed.stampedAt}.`, before)
    else ledger.leaveOpen('time-stamp', 'When it was signed: the file carries no time stamp of an independent service.')
  }
  return signed
}

/** Read the whole file once: digest of all but the signature's gap, digests of the photos, and parts that must not be there. */
async function walk(
  source: ByteSource,
  layout: Layout,
  field: SignatureField | null,
  refs: AttachmentRefs,
  ledger: Ledger,
  { hasher, onProgress }: CheckOptions,
): Promise<{ digest: Uint8Array; photos: PhotoObject[] }> {
  const hash = hasher.stream()
  const { gapFrom, gapTo } = field ?? { gapFrom: layout.sizeBytes, gapTo: layout.sizeBytes }
  const photos: PhotoObject[] = []
  const waiting: Promise<void>[] = []
  const known = new Set(refs.flatMap((one) => [one.specification, one.stream]))
  await walkObjects(source, layout, ledger, {
    onBytes(bytes, at) {
      const end = at + bytes.length
      if (at < gapFrom) hash.update(bytes.subarray(0, Math.min(end, gapFrom) - at))
      if (end > gapTo) hash.update(bytes.subarray(Math.max(gapTo, at) - at))
      onProgress(end)
    },
    async onObject(object) {
      checkKind(object, field, known, ledger)
      if (!object.stream || !isNamed(object.value, 'Filter', 'DCTDecode')) return
      const { no, stream } = object
      const photo: PhotoObject = { no, sha256: '', sizeBytes: stream.length }
      photos.push(photo)
      const hashing = hasher.digest(stream).then((digest) => {
        photo.sha256 = hexOf(digest)
      })
      waiting.push(hashing)
      if (waiting.length >= HASHES_AT_ONCE) await waiting.shift()
    },
  })
  await Promise.all(waiting)
  return { digest: hash.digest(), photos }
}

/** Breaks: `object-stream`, `more-signatures`, `attachments-differ`, and `object-malformed` for a photo behind another filter. */
function checkKind(
  { no, value, stream }: PdfObject,
  field: SignatureField | null,
  known: ReadonlySet<number>,
  ledger: Ledger,
): void {
  if (value.kind !== 'dict') return
  const place = `object ${no}`
  if (isNamed(value, 'Type', 'ObjStm') || isNamed(value, 'Type', 'XRef')) ledger.broken('object-stream', place)
  if (no !== field?.no && (isNamed(value, 'Type', 'Sig') || value.entries.has('ByteRange')))
    ledger.broken('more-signatures', place)
  if ((isNamed(value, 'Type', 'EmbeddedFile') || isNamed(value, 'Type', 'Filespec')) && !known.has(no))
    ledger.broken('attachments-differ', place)
  const filter = stream ? value.entries.get('Filter') : undefined
  if (filter && filter.kind !== 'name') ledger.broken('object-malformed', `${place}: more than one filter`)
}
