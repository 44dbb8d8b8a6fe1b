import { fromRaster, type Raster } from '@/lib/photo/picture-engine'

const THUMB_SIDE_PX = 320
const GREY_SIDE_PX = 800
const RENDITION_QUALITY = 80
const THUMB_QUALITY = 75

export type DrawnJpeg = { bytes: Buffer; widthPx: number; heightPx: number }

/** Draw the rendition, the thumb (at most 320 px) and the grey picture to measure (at most 800 px) from one decode. JPEGs are sRGB without metadata. */
export async function drawRenditions(
  decoded: Raster,
): Promise<{ rendition: DrawnJpeg; thumb: DrawnJpeg; grey: Raster }> {
  const [rendition, thumb, grey] = await Promise.all([
    drawJpeg(decoded, decoded.widthPx, decoded.heightPx, RENDITION_QUALITY),
    drawJpeg(decoded, THUMB_SIDE_PX, THUMB_SIDE_PX, THUMB_QUALITY),
    drawGrey(decoded),
  ])
  return { rendition, thumb, grey }
}

async function drawJpeg(decoded: Raster, width: number, height: number, quality: number): Promise<DrawnJpeg> {
  const pipeline = fromRaster(decoded).resize({ width, height, fit: 'inside', withoutEnlargement: true })
  const { data, info } = await pipeline.jpeg({ quality }).toBuffer({ resolveWithObject: true })
  return { bytes: data, widthPx: info.width, heightPx: info.height }
}

async function drawGrey(decoded: Raster): Promise<Raster> {
  const pipeline = fromRaster(decoded).resize({
    width: GREY_SIDE_PX,
    height: GREY_SIDE_PX,
    fit: 'inside',
    withoutEnlargement: true,
  })
  const { data, info } = await pipeline.greyscale().raw().toBuffer({ resolveWithObject: true })
  return { pixels: data, widthPx: info.width, heightPx: info.height, channels: 1 }
}
