import { createHash } from 'node:crypto'
import { open } from 'node:fs/promises'
import type { PDFContext, PDFRef } from 'pdf-lib'
import type { DossierSigner } from '../sign/dossier-signer'
import { FileSink } from './file-sink'
import { readJpegHeader } from './jpeg-header'
import { objectsOf, type ReadyObject } from './object-bytes'
import { createPhotoReader, type PhotoBytes } from './photo-reader'
import { CONTENTS_LENGTH, signatureContents, signatureText } from './signature-object'

export type StreamedPhoto = { ref: PDFRef; sha256: string }

/** A document ready to be written: objects of the context, objects as ready bytes, photos by digest, and the number kept for the signature. */
export type ComposedDocument = {
  context: PDFContext
  ready: Iterable<ReadyObject>
  photos: readonly StreamedPhoto[]
  signature: { ref: PDFRef; signer: DossierSigner } | null
  /** PDF 1.7, or 1.4 for the older twin. */
  version: '1.7' | '1.4'
}

/** A stored photo is gone, is not what its digest says, or is no JPEG that can be embedded. */
export class PhotoUnusable extends Error {
  constructor(readonly sha256: string) {
    super(`The stored photo ${sha256} is missing, damaged or no JPEG`)
  }
}

/**
 * Write the document to `path`: header, objects, the photos read one at a time (their bytes go in unchanged), the signature's object, a classic cross-reference table and
 * trailer. All that the signature covers has a known place before it is made, so the file is written and hashed once, from start to end, and memory does not grow
 * with the number of photos. The file is synced before the promise settles.
 * @returns SHA-256 and size of the bytes as written
 * @throws PhotoUnusable when a photo does not match its digest; what the signer throws
 */
export async function writeStreaming(
  document: ComposedDocument,
  store: PhotoBytes,
  path: string,
  onPhoto: (written: number) => void,
): Promise<{ sha256: string; sizeBytes: number }> {
  const file = await open(path, 'w', 0o644)
  try {
    const sink = new FileSink(file)
    const offsets = new Map<number, number>()
    await sink.put(`%PDF-${document.version}\n%\x81\x81\x81\x81\n`)
    for (const source of [objectsOf(document.context), document.ready])
      for (const { objectNo, value } of source) {
        offsets.set(objectNo, sink.sizeBytes)
        if (typeof value === 'string') await sink.put(`${objectNo} 0 obj\n${value}\nendobj\n`)
        else {
          await sink.put(`${objectNo} 0 obj\n`)
          await sink.put(value)
          await sink.put('\nendobj\n')
        }
      }
    await writePhotos(document.photos, store, sink, offsets, onPhoto)
    await writeEnd(document, sink, offsets)
    await sink.close()
    return { sha256: sink.sha256With().toString('hex'), sizeBytes: sink.sizeBytes }
  } finally {
    await file.close()
  }
}

async function writePhotos(
  photos: readonly StreamedPhoto[],
  store: PhotoBytes,
  sink: FileSink,
  offsets: Map<number, number>,
  onPhoto: (written: number) => void,
): Promise<void> {
  const readPhoto = createPhotoReader(store)
  const readAhead = (index: number): Promise<Uint8Array | null> => {
    const photo = photos[index]
    const reading = photo ? readPhoto(photo.sha256) : Promise.resolve(null)
    reading.catch(() => undefined)
    return reading
  }
  let reading = readAhead(0)
  for (const [index, { ref, sha256 }] of photos.entries()) {
    const bytes = await reading
    reading = readAhead(index + 1)
    const header = bytes && createHash('sha256').update(bytes).digest('hex') === sha256 ? readJpegHeader(bytes) : null
    if (!bytes || !header || ![1, 3].includes(header.components)) throw new PhotoUnusable(sha256)
    offsets.set(ref.objectNumber, sink.sizeBytes)
    await sink.put(
      `${ref.objectNumber} 0 obj\n<< /Type /XObject /Subtype /Image /Width ${header.widthPx} /Height ${header.heightPx} /ColorSpace /${header.components === 1 ? 'DeviceGray' : 'DeviceRGB'} /BitsPerComponent 8 /Filter /DCTDecode /Length ${bytes.length} >>\nstream\n`,
    )
    await sink.put(bytes)
    await sink.put('\nendstream\nendobj\n')
    await sink.flush()
    onPhoto(index + 1)
  }
}

async function writeEnd(
  { context, signature }: ComposedDocument,
  sink: FileSink,
  offsets: Map<number, number>,
): Promise<void> {
  if (!signature) return sink.put(tail(context, offsets, sink.sizeBytes))
  const no = signature.ref.objectNumber
  const objectAt = sink.sizeBytes
  offsets.set(no, objectAt)
  // the numbers of the byte range and the offset of the table have the same width whatever they are
  const tableAt = (around: { before: string; after: string }): number =>
    objectAt + around.before.length + CONTENTS_LENGTH + around.after.length
  const probe = signatureText(no, signature.signer.signedAt, objectAt, 0)
  const end = tail(context, offsets, tableAt(probe))
  const { before, after } = signatureText(no, signature.signer.signedAt, objectAt, end.length)
  const der = await signature.signer.sign(sink.sha256With(before, after, end))
  await sink.put(before)
  await sink.put(signatureContents(der))
  await sink.put(after)
  await sink.put(end)
}

function tail(context: PDFContext, offsets: ReadonlyMap<number, number>, startAt: number): string {
  const size = context.largestObjectNumber + 1
  const rows = Array.from({ length: size - 1 }, (_, index) => {
    const offset = offsets.get(index + 1)
    if (offset === undefined) throw new Error(`Object ${index + 1} of the dossier was not written`)
    return `${String(offset).padStart(10, '0')} 00000 n \n`
  })
  const { Root, Info, ID } = context.trailerInfo
  const trailer = context.obj({
    Size: size,
    ...(Root ? { Root } : {}),
    ...(Info ? { Info } : {}),
    ...(ID ? { ID } : {}),
  })
  return `xref\n0 ${size}\n0000000000 65535 f \n${rows.join('')}trailer\n${trailer}\nstartxref\n${startAt}\n%%EOF\n`
}
