import { createHash } from 'node:crypto'
import { done, type Result } from '@/lib/domain/result'
import { type DecodedPhoto, decodePhoto } from '@/lib/photo/decode-photo'
import { type DrawnJpeg, drawRenditions } from '@/lib/photo/draw-renditions'
import { readPhotoClaims } from '@/lib/photo/photo-claims'
import { type PhotoHeader, readPhotoHeader } from '@/lib/photo/photo-header'
import type { PhotoIntake, PhotoLimits, PhotoRefusal, Rendition } from '@/lib/photo/photo-intake'
import { measurePhoto } from '@/lib/photo/photo-measures'
import type { PhotoStore } from '@/lib/photo/photo-store'
import { createSlots } from '@/lib/photo/slots'

/** Two decodes at once: a third adds memory and next to no speed on two cores. */
const decodeSlots = createSlots(2)

/**
 * Take a photo in: hold it to the limits before decoding, decode it once, draw its rendition and thumb, measure it, and
 * store the original byte for byte with both, each under its SHA-256. Nothing is stored of a refused photo.
 * Refuses `empty`, `too-large`, `unknown-type`, `too-many-pixels`, `damaged`.
 * @throws Error when the store is lost
 */
export async function takeInPhoto(photo: {
  bytes: Uint8Array
  store: PhotoStore
  limits: PhotoLimits
}): Promise<Result<PhotoIntake, PhotoRefusal>> {
  const { bytes, store, limits } = photo
  const header = await readPhotoHeader(bytes, limits)
  if (!header.ok) return header
  const drawn = await decodeSlots.run(() => decodeAndDraw(bytes, header.value, limits.maxPixels))
  if (!drawn.ok) return drawn
  const { decoded, rendition, thumb, measures } = drawn.value
  const sha256 = digestOf(bytes)
  const [claims, storedRendition, storedThumb] = await Promise.all([
    readPhotoClaims(header.value.exif),
    storeDrawn(store, rendition),
    storeDrawn(store, thumb),
    store.put(sha256, bytes),
  ])
  return done({
    sha256,
    sizeBytes: bytes.length,
    type: header.value.type,
    widthPx: decoded.originalWidthPx,
    heightPx: decoded.originalHeightPx,
    rendition: storedRendition,
    thumb: storedThumb,
    claims,
    measures,
  })
}

async function decodeAndDraw(bytes: Uint8Array, header: PhotoHeader, maxPixels: number) {
  const decoded = await decodePhoto(bytes, header, maxPixels)
  return decoded.ok ? done(await drawAndMeasure(decoded.value)) : decoded
}

async function drawAndMeasure(decoded: DecodedPhoto) {
  const { rendition, thumb, grey } = await drawRenditions(decoded.raster)
  return { decoded, rendition, thumb, measures: await measurePhoto(grey) }
}

async function storeDrawn(store: PhotoStore, drawn: DrawnJpeg): Promise<Rendition> {
  const sha256 = digestOf(drawn.bytes)
  await store.put(sha256, drawn.bytes)
  return { sha256, sizeBytes: drawn.bytes.length, widthPx: drawn.widthPx, heightPx: drawn.heightPx }
}

function digestOf(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex')
}
