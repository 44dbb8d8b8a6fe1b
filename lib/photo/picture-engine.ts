import sharp, { type Sharp } from 'sharp'

// Photos differ, so a cache of decoded ones only costs memory; two photos are worked on at once, so each gets one thread.
sharp.cache(false)
sharp.concurrency(1)

/** The picture library with this product's settings; the whole process shares them. */
export const pictureEngine = sharp

/** A picture in memory: rows from the top, `channels` bytes a pixel. */
export type Raster = { pixels: Uint8Array; widthPx: number; heightPx: number; channels: 1 | 3 | 4 }

/** Start a pipeline from a raster. */
export function fromRaster(raster: Raster): Sharp {
  return sharp(raster.pixels, { raw: { width: raster.widthPx, height: raster.heightPx, channels: raster.channels } })
}

/** What a decoder said, as one line of at most 200 characters. */
export function decoderReason(error: unknown): string {
  const text = error instanceof Error ? error.message : String(error)
  const lines = text.split('\n').map((line) => line.trim())
  return (lines.find((line) => line !== '') ?? 'no reason given').slice(0, 200)
}
