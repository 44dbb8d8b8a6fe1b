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
  return { sharpness: measureSharpness(grey), exposure: measureExposure(grey), ...hashLook(grey) }
}

function measureSharpness({ pixels, widthPx, heightPx }: Raster): number | null {
  if (widthPx < 3 || heightPx < 3) return null
  let sum = 0
  let squares = 0
  for (let y = 1; y < heightPx - 1; y++) {
    for (let at = y * widthPx + 1, end = (y + 1) * widthPx - 1; at < end; at++) {
      const around =
        (pixels[at - 1] ?? 0) + (pixels[at + 1] ?? 0) + (pixels[at - widthPx] ?? 0) + (pixels[at + widthPx] ?? 0)
      const bend = 4 * (pixels[at] ?? 0) - around
      sum += bend
      squares += bend * bend
    }
  }
  const count = (widthPx - 2) * (heightPx - 2)
  return squares / count - (sum / count) ** 2
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
