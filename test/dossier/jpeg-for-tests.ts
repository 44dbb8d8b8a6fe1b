import { createHash } from 'node:crypto'
import sharp from 'sharp'
import type { PhotoBytes } from '@/lib/dossier/pdf/photo-reader'

export type MadeJpeg = { bytes: Buffer; sha256: string; widthPx: number; heightPx: number }

/** A small JPEG of one colour; grey when asked for. */
export async function makeJpeg(background: string, isGrey = false): Promise<MadeJpeg> {
  const picture = sharp({ create: { width: 40, height: 30, channels: 3, background } })
  const bytes = await (isGrey ? picture.toColourspace('b-w') : picture).jpeg().toBuffer()
  return { bytes, sha256: createHash('sha256').update(bytes).digest('hex'), widthPx: 40, heightPx: 30 }
}

/** A store that holds these bytes under these names, whether or not they match. */
export function storeOf(objects: Readonly<Record<string, Buffer>>): PhotoBytes {
  return { read: async (sha256) => objects[sha256] ?? null, has: async (sha256) => Object.hasOwn(objects, sha256) }
}
