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

/** Words of the JPEG decoder for coded data that is broken or missing; its other warnings concern harmless surroundings. */
const BROKEN_DATA = /premature end|bad Huffman code|bad arithmetic code|instead of RST/i

/**
 * Decode a photo whose header was held to the limits. Refuses `damaged` for a file that ends early, whose coded data is
 * broken, or that does not decode in a minute (harmless warnings are let pass); `too-many-pixels` where a HEIC holds
 * more than its header said.
 */
export async function decodePhoto(
  bytes: Uint8Array,
  header: PhotoHeader,
  maxPixels: number,
): Promise<Result<DecodedPhoto, PhotoRefusal>> {
  if (header.type === 'heic') {
    const picture = await decodeHeic(bytes, maxPixels)
    if (!picture.ok) return picture
    const { widthPx: originalWidthPx, heightPx: originalHeightPx } = picture.value
    const raster = await toRaster(() => shrinkToSrgb(picture.value, header.icc))
    return raster.ok ? done({ raster: raster.value, originalWidthPx, originalHeightPx }) : raster
  }
  const decodeUnless = (failOn: 'warning' | 'error') => {
    const options = { failOn, limitInputPixels: maxPixels, ignoreIcc: header.icc === null }
    return toRaster(async () => pictureEngine(bytes, options).autoOrient().resize(INSIDE))
  }
  let raster = await decodeUnless('warning')
  if (!raster.ok && !BROKEN_DATA.test(raster.error.reason)) raster = await decodeUnless('error')
  return raster.ok
    ? done({ raster: raster.value, originalWidthPx: header.widthPx, originalHeightPx: header.heightPx })
    : raster
}

async function shrinkToSrgb(picture: Raster, icc: Uint8Array | null): Promise<Sharp> {
  const shrunk = fromRaster(picture).removeAlpha().resize(INSIDE)
  if (icc === null) return shrunk
  return pictureEngine(attachIcc(await shrunk.png({ compressionLevel: 0 }).toBuffer(), icc))
}

async function toRaster(start: () => Promise<Sharp>): Promise<Result<Raster, { code: 'damaged'; reason: string }>> {
  try {
    const upright = (await start()).flatten({ background: '#ffffff' }).toColourspace('srgb')
    const pipeline = upright.timeout({ seconds: TIME_LIMIT_SECONDS }).raw({ depth: 'uchar' })
    const { data, info } = await pipeline.toBuffer({ resolveWithObject: true })
    if (info.channels !== 3) throw new Error(`decoded to ${info.channels} channels, not three`)
    return done({ pixels: data, widthPx: info.width, heightPx: info.height, channels: 3 })
  } catch (error) {
    return refused({ code: 'damaged', reason: decoderReason(error) })
  }
}
