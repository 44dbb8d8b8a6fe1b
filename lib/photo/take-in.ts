import { done, type Result } from '@/lib/domain/result'
import { DECODED_SIDE_PX, decodePhoto } from '@/lib/photo/decode-photo'
import { type DrawnJpeg, drawJpeg } from '@/lib/photo/draw-jpeg'
import { halvePicture } from '@/lib/photo/halve-picture'
import { readPhotoClaims } from '@/lib/photo/photo-claims'
import { readPhotoHeader } from '@/lib/photo/photo-header'
import type { PhotoIntake, PhotoLimits, PhotoRefusal, Rendition } from '@/lib/photo/photo-intake'
import { measurePhoto } from '@/lib/photo/photo-measures'
import { addToStore, type PhotoStore } from '@/lib/photo/photo-store'
import type { Raster } from '@/lib/photo/picture-engine'
import { createSlots } from '@/lib/photo/slots'

const RENDITION_QUALITY = 80
const THUMB_SIDE_PX = 320
const THUMB_QUALITY = 75

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
  const decoded = await decodeSlots.run(() => decodePhoto(bytes, header.value, limits.maxPixels))
  if (!decoded.ok) return decoded
  const { raster, originalWidthPx, originalHeightPx } = decoded.value
  const drawn = await drawAndMeasure(raster)
  const [sha256, claims, rendition, thumb] = await Promise.all([
    addToStore(store, bytes),
    readPhotoClaims(header.value.exif),
    storeDrawn(store, drawn.rendition),
    storeDrawn(store, drawn.thumb),
  ])
  return done({
    sha256,
    sizeBytes: bytes.length,
    type: header.value.type,
    widthPx: originalWidthPx,
    heightPx: originalHeightPx,
    rendition,
    thumb,
    claims,
    measures: drawn.measures,
  })
}

async function drawAndMeasure(decoded: Raster) {
  const drawingRendition = drawJpeg(decoded, DECODED_SIDE_PX, RENDITION_QUALITY)
  const { colour, grey } = halvePicture(decoded)
  const drawingThumb = drawJpeg(colour, THUMB_SIDE_PX, THUMB_QUALITY)
  const measures = measurePhoto(grey)
  const [rendition, thumb] = await Promise.all([drawingRendition, drawingThumb])
  return { rendition, thumb, measures }
}

async function storeDrawn(store: PhotoStore, drawn: DrawnJpeg): Promise<Rendition> {
  const sha256 = await addToStore(store, drawn.bytes)
  return { sha256, sizeBytes: drawn.bytes.length, widthPx: drawn.widthPx, heightPx: drawn.heightPx }
}
