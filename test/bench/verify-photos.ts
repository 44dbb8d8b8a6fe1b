import { createHash } from 'node:crypto'
import { mkdirSync, writeFileSync } from 'node:fs'
import { dirname } from 'node:path'
import { FactId } from '@/lib/domain/facts/fact'
import type { Fact } from '@/lib/domain/facts/fact-kinds'
import { createFolderPhotoStore } from '@/lib/photo/folder-photo-store'
import { pictureEngine } from '@/lib/photo/picture-engine'
import { photoState, SIZE } from './dossier-photos'

/** Write so many renditions of about a third of a megabyte, each with bytes of its own, and give the facts that attach them to MD-0041. */
export async function attachPhotos(folder: string, count: number): Promise<Fact[]> {
  const store = createFolderPhotoStore(folder)
  const noise = await pictureEngine({
    create: {
      width: 700,
      height: 525,
      channels: 3,
      background: '#808080',
      noise: { type: 'gaussian', mean: 128, sigma: 34 },
    },
  })
    .png({ compressionLevel: 0 })
    .toBuffer()
  const scene = await pictureEngine(noise)
    .resize(SIZE.widthPx, SIZE.heightPx, { fit: 'fill' })
    .jpeg({ quality: 80 })
    .toBuffer()
  return Array.from({ length: count }, (_, at) => {
    const comment = Buffer.from(`photo ${at}`)
    const segment = Buffer.concat([Buffer.from([0xff, 0xfe, 0, comment.length + 2]), comment])
    const bytes = Buffer.concat([scene.subarray(0, 2), segment, scene.subarray(2)])
    const sha256 = createHash('sha256').update(bytes).digest('hex')
    mkdirSync(dirname(store.path(sha256)), { recursive: true })
    writeFileSync(store.path(sha256), bytes)
    const { fact } = photoState(sha256, at)
    const { photo } = fact.body
    const sized = { ...photo, sizeBytes: bytes.length, rendition: { ...photo.rendition, sizeBytes: bytes.length } }
    const id = FactId.parse(`0196d000-0000-7000-8000-${String(900_000 + at).padStart(12, '0')}`)
    return { ...fact, id, body: { ...fact.body, photo: sized } }
  })
}
