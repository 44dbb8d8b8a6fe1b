import { sharpnessOf } from '@/lib/domain/photo/sharpness'
import { hashLook } from '@/lib/photo/perceptual-hash'
import type { Raster } from '@/lib/photo/picture-engine'

/** Levels (0 black to 255 white) at or beyond which a pixel counts as clipped. */
export const CLIPPED_LEVELS = { darkMax: 7, brightMin: 248 } as const

/** `meanLevel` 0 to 255; the shares are parts of all pixels, 0 to 1. */
export type Exposure = { meanLevel: number; darkShare: number; brightShare: number }

/**
 * What was measured on the grey picture. `sharpness` is the variance of the Laplacian (level²), higher
 * is sharper; it grows with brightness and detail, so compare like with like; null for a picture under 3 px a side.
 */
export type PhotoMeasures = { sharpness: number | null; exposure: Exposure; dHash: string; pHash: string }

/** Measure a grey picture. */
export function measurePhoto(grey: Raster): PhotoMeasures {
  return { sharpness: sharpnessOf(grey), exposure: measureExposure(grey), ...hashLook(grey) }
}

function measureExposure({ pixels }: Raster): Exposure {
  const counts = new Uint32Array(256)
  for (let at = 0; at < pixels.length; at++) {
    const level = pixels[at] ?? 0
    counts[level] = (counts[level] ?? 0) + 1
  }
  const sumOf = (from: number, to: number) => counts.slice(from, to + 1).reduce((sum, count) => sum + count, 0)
  const meanLevel = counts.reduce((sum, count, level) => sum + count * level, 0) / pixels.length
  return {
    meanLevel,
    darkShare: sumOf(0, CLIPPED_LEVELS.darkMax) / pixels.length,
    brightShare: sumOf(CLIPPED_LEVELS.brightMin, 255) / pixels.length,
  }
}
