import type { PhotoClaims } from '@/lib/photo/photo-claims'
import type { PhotoMeasures } from '@/lib/photo/photo-measures'
import type { PhotoType } from '@/lib/photo/sniff-type'

/** A JPEG made from the original, stored under its own digest. */
export type Rendition = { sha256: string; sizeBytes: number; widthPx: number; heightPx: number }

/** What is known of a photo once taken in. Width and height are those of the picture standing upright. */
export type PhotoIntake = {
  sha256: string
  sizeBytes: number
  type: PhotoType
  widthPx: number
  heightPx: number
  rendition: Rendition
  thumb: Rendition
  claims: PhotoClaims
  measures: PhotoMeasures
}

export type PhotoLimits = { maxBytes: number; maxPixels: number }

/** Bounds that take in the photos of today's phones (48 to 50 megapixels) and keep memory bounded. */
export const DEFAULT_PHOTO_LIMITS: PhotoLimits = { maxBytes: 40_000_000, maxPixels: 60_000_000 }

/** Why a photo was not taken in. `reason` of `damaged` is the decoder's own text, one line of at most 200 characters. */
export type PhotoRefusal =
  | { code: 'empty' }
  | { code: 'too-large'; sizeBytes: number; maxBytes: number }
  | { code: 'unknown-type' }
  | { code: 'too-many-pixels'; widthPx: number; heightPx: number; maxPixels: number }
  | { code: 'damaged'; reason: string }
