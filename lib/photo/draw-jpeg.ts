import { fromRaster, type Raster } from '@/lib/photo/picture-engine'

export type DrawnJpeg = { bytes: Buffer; widthPx: number; heightPx: number }

/** Draw a picture as an sRGB JPEG without metadata, at most `sidePx` long and never enlarged. */
export async function drawJpeg(picture: Raster, sidePx: number, quality: number): Promise<DrawnJpeg> {
  const resized = fromRaster(picture).resize({ width: sidePx, height: sidePx, fit: 'inside', withoutEnlargement: true })
  // optimal Huffman tables would save a few hundredths of the size for three times the time
  const { data, info } = await resized.jpeg({ quality, optimiseCoding: false }).toBuffer({ resolveWithObject: true })
  return { bytes: data, widthPx: info.width, heightPx: info.height }
}
