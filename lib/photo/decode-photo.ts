import type { Sharp } from 'sharp'
import { done, type Result, refused } from '@/lib/domain/result'
import { attachIcc } from '@/lib/photo/attach-icc'
import { decodeHeic } from '@/lib/photo/decode-heic'
import type { PhotoHeader } from '@/lib/photo/photo-header'
import type { PhotoRefusal } from '@/lib/photo/photo-intake'
import { decoderReason, fromRaster, pictureEngine, type Raster } from '@/lib/photo/picture-engine'

/** The longest side of the one decode. A 12-megapixel JPEG is shrunk while loading only down to a third of its side. */
export const DECODED_SIDE_PX = 1344

const TIME_LIMIT_SECONDS = 60
const INSIDE = { width: DECODED_SIDE_PX, height: DECODED_SIDE_PX, fit: 'inside', withoutEnlargement: true } as const

/** A decoded picture in sRGB, three channels, upright, at most 1344 px long; with the upright size of the original. */
export type DecodedPhoto = { raster: Raster; originalWidthPx: number; originalHeightPx: number }

/**
 * Decode a photo whose header was held to the limits. Refuses `damaged` for files that end early or do not decode (a
 * decoder's mere warnings are let pass), `too-many-pixels` where a HEIC holds more than its header said.
 */
export async function decodePhoto(
  bytes: Uint8Array,
  header: PhotoHeader,
  maxPixels: number,
): Promise<Result<DecodedPhoto, PhotoRefusal>> {
  if (header.type === 'heic') {
    const picture = await decodeHeic(bytes, maxPixels)
    if (!picture.ok) return picture
    const { widthPx, heightPx } = picture.value
    return finish(() => shrinkToSrgb(picture.value, header.icc), widthPx, heightPx)
  }
  const options = { failOn: 'error', limitInputPixels: maxPixels, ignoreIcc: header.icc === null } as const
  return finish(async () => pictureEngine(bytes, options).autoOrient().resize(INSIDE), header.widthPx, header.heightPx)
}

async function shrinkToSrgb(picture: Raster, icc: Uint8Array | null): Promise<Sharp> {
  const shrunk = fromRaster(picture).removeAlpha().resize(INSIDE)
  if (icc === null) return shrunk
  return pictureEngine(attachIcc(await shrunk.png({ compressionLevel: 0 }).toBuffer(), icc))
}

async function finish(
  start: () => Promise<Sharp>,
  originalWidthPx: number,
  originalHeightPx: number,
): Promise<Result<DecodedPhoto, PhotoRefusal>> {
  try {
    const pipeline = (await start())
      .flatten({ background: '#ffffff' })
      .toColourspace('srgb')
      .timeout({ seconds: TIME_LIMIT_SECONDS })
    const { data, info } = await pipeline.raw({ depth: 'uchar' }).toBuffer({ resolveWithObject: true })
    if (info.channels !== 3) throw new Error(`decoded to ${info.channels} channels, not three`)
    return done({
      raster: { pixels: data, widthPx: info.width, heightPx: info.height, channels: 3 },
      originalWidthPx,
      originalHeightPx,
    })
  } catch (error) {
    return refused({ code: 'damaged', reason: decoderReason(error) })
  }
}
