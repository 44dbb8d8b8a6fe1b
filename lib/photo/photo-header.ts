import { done, type Result, refused } from '@/lib/domain/result'
import { findCutBox } from '@/lib/photo/heif-boxes'
import type { PhotoLimits, PhotoRefusal } from '@/lib/photo/photo-intake'
import { decoderReason, pictureEngine } from '@/lib/photo/picture-engine'
import { type PhotoType, sniffType } from '@/lib/photo/sniff-type'
import { isSrgbProfile } from '@/lib/photo/srgb-profile'

/** What the header states before any pixel is decoded. `icc` is null where pixels need no colour transform. */
export type PhotoHeader = {
  type: PhotoType
  exif: Uint8Array | undefined
  icc: Uint8Array | null
  widthPx: number
  heightPx: number
}

const ENGINE_FORMATS: Record<PhotoType, string> = { jpeg: 'jpeg', png: 'png', webp: 'webp', heic: 'heif' }

/**
 * Read a photo's header and hold it to the limits; no pixel is decoded. Width and height stand upright.
 * Refuses `empty`, `too-large`, `unknown-type`, `damaged` (unreadable header), `too-many-pixels`.
 */
export async function readPhotoHeader(
  bytes: Uint8Array,
  limits: PhotoLimits,
): Promise<Result<PhotoHeader, PhotoRefusal>> {
  if (bytes.length === 0) return refused({ code: 'empty' })
  if (bytes.length > limits.maxBytes)
    return refused({ code: 'too-large', sizeBytes: bytes.length, maxBytes: limits.maxBytes })
  const type = sniffType(bytes)
  if (type === null) return refused({ code: 'unknown-type' })
  const cutBox = type === 'heic' ? findCutBox(bytes) : null
  if (cutBox !== null) return refused({ code: 'damaged', reason: `the file ends inside its box ${cutBox}` })
  try {
    const stated = await pictureEngine(bytes, { limitInputPixels: false, failOn: 'error' }).metadata()
    if (stated.format !== ENGINE_FORMATS[type])
      return refused({ code: 'damaged', reason: `header reads as ${stated.format}` })
    const { width: widthPx, height: heightPx } = stated.autoOrient
    if (widthPx * heightPx > limits.maxPixels) {
      return refused({ code: 'too-many-pixels', widthPx, heightPx, maxPixels: limits.maxPixels })
    }
    const icc = stated.icc === undefined || isSrgbProfile(stated.icc) ? null : stated.icc
    return done({ type, exif: stated.exif, icc, widthPx, heightPx })
  } catch (error) {
    return refused({ code: 'damaged', reason: decoderReason(error) })
  }
}
