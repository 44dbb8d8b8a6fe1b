import { createHash } from 'node:crypto'
import { open } from 'node:fs/promises'
import type { PDFContext, PDFRef } from 'pdf-lib'
import { readJpegHeader } from './jpeg-header'
import { createPhotoReader, type PhotoBytes } from './photo-reader'

export type StreamedPhoto = { ref: PDFRef; sha256: string }

/** A stored photo is gone, is not what its digest says, or is no JPEG that can be embedded. */
export class PhotoUnusable extends Error {
  constructor(readonly sha256: string) {
    super(`The stored photo ${sha256} is missing, damaged or no JPEG`)
  }
}

const BUFFER_BYTES = 1 << 18

/**
 * Write the document to `path`: header, every object of the context, the photos read one at a time (their bytes go in unchanged), a classic
 * cross-reference table and trailer. Memory does not grow with the number of photos. The file is synced before the promise settles.
 * @returns SHA-256 and size of the bytes as written
 * @throws PhotoUnusable when a photo does not match its digest
 */
export async function writeStreaming(
  context: PDFContext,
  photos: readonly StreamedPhoto[],
  store: PhotoBytes,
  path: string,
  onPhoto: (written: number) => void,
): Promise<{ sha256: string; sizeBytes: number }> {
  const file = await open(path, 'w', 0o644)
  try {
    const hash = createHash('sha256')
    const offsets: number[] = []
    let waiting: Uint8Array[] = []
    let [sizeBytes, waitingBytes] = [0, 0]
    let writing: Promise<unknown> = Promise.resolve()
    const flush = async (): Promise<void> => {
      await writing
      if (waiting.length > 0) writing = file.writev(waiting)
      writing.catch(() => undefined)
      waiting = []
      waitingBytes = 0
    }
    const put = async (part: string | Uint8Array): Promise<void> => {
      const bytes = typeof part === 'string' ? Buffer.from(part, 'latin1') : part
      waiting.push(bytes)
      sizeBytes += bytes.length
      waitingBytes += bytes.length
      if (waitingBytes > BUFFER_BYTES) await flush()
      hash.update(bytes)
    }
    await put('%PDF-1.7\n%\x81\x81\x81\x81\n')
    for (const [ref, object] of context.enumerateIndirectObjects()) {
      offsets[ref.objectNumber] = sizeBytes
      const body = Buffer.alloc(object.sizeInBytes())
      object.copyBytesInto(body, 0)
      await put(`${ref.objectNumber} 0 obj\n`)
      await put(body)
      await put('\nendobj\n')
    }
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
      offsets[ref.objectNumber] = sizeBytes
      await put(
        `${ref.objectNumber} 0 obj\n<< /Type /XObject /Subtype /Image /Width ${header.widthPx} /Height ${header.heightPx} /ColorSpace /${header.components === 1 ? 'DeviceGray' : 'DeviceRGB'} /BitsPerComponent 8 /Filter /DCTDecode /Length ${bytes.length} >>\nstream\n`,
      )
      await put(bytes)
      await put('\nendstream\nendobj\n')
      await flush()
      onPhoto(index + 1)
    }
    await put(tail(context, offsets, sizeBytes))
    await flush()
    await writing
    await file.sync()
    return { sha256: hash.digest('hex'), sizeBytes }
  } finally {
    await file.close()
  }
}

function tail(context: PDFContext, offsets: readonly (number | undefined)[], startAt: number): string {
  const size = context.largestObjectNumber + 1
  const rows = Array.from({ length: size - 1 }, (_, index) => {
    const offset = offsets[index + 1]
    return offset === undefined ? '0000000000 00000 f \n' : `${String(offset).padStart(10, '0')} 00000 n \n`
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
