import { createHash } from 'node:crypto'
import { mkdtempSync, rmSync } from 'node:fs'
import { open, readFile, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { DECODED_SIDE_PX } from '@/lib/photo/decode-photo'
import { createFolderPhotoStore } from '@/lib/photo/folder-photo-store'
import { DEFAULT_PHOTO_LIMITS } from '@/lib/photo/photo-intake'
import { pictureEngine } from '@/lib/photo/picture-engine'
import { createSlots } from '@/lib/photo/slots'
import { takeInPhoto } from '@/lib/photo/take-in'

const PHOTO_COUNT = 20
const ROUNDS = 5
const BOUND = 1.5
const SIZE = { width: 4032, height: 3024 } as const

/**
 * Measure photo intake against the least any intake must do, taken in the same run: read, hash, decode and resize at the
 * same size two at a time, and write the original synced. Twenty 12-megapixel JPEGs of about 3.5 MB; the ratio is of
 * the fastest of five rounds, each of both in turn: other work on the machine only ever adds time.
 */
export async function benchPhotoIntake(): Promise<{ name: string; ratio: number; bound: number; lines: string[] }> {
  const folder = mkdtempSync(join(tmpdir(), 'bench-photos-'))
  try {
    const paths = await drawPhotos(folder)
    const floors: number[] = []
    const intakes: number[] = []
    for (let round = 0; round < ROUNDS; round++) {
      floors.push(await timeMs(() => runFloor(paths, mkdtempSync(join(folder, 'floor-')))))
      intakes.push(await timeMs(() => runIntake(paths, mkdtempSync(join(folder, 'store-')))))
    }
    const [floorMs, intakeMs] = [Math.min(...floors) / PHOTO_COUNT, Math.min(...intakes) / PHOTO_COUNT]
    const lines = [
      `floor  ${floorMs.toFixed(0)} ms a photo (read, sha256, decode to ${DECODED_SIDE_PX} px two at a time, original written and synced)`,
      `intake ${intakeMs.toFixed(0)} ms a photo (the same, and rendition, thumb, measures, claims, three stored objects)`,
    ]
    return { name: 'photo intake', ratio: intakeMs / floorMs, bound: BOUND, lines }
  } finally {
    rmSync(folder, { recursive: true })
  }
}

/** The floor's only bound is on decodes, as the intake's is: its writes overlap the next decode just the same. */
async function runFloor(paths: string[], folder: string): Promise<void> {
  const decodeSlots = createSlots(2)
  const size = { width: DECODED_SIDE_PX, height: DECODED_SIDE_PX, fit: 'inside' } as const
  const takeOne = async (path: string) => {
    const bytes = await readFile(path)
    const sha256 = createHash('sha256').update(bytes).digest('hex')
    await decodeSlots.run(() => pictureEngine(bytes, { ignoreIcc: true }).autoOrient().resize(size).raw().toBuffer())
    const file = await open(join(folder, sha256), 'wx')
    await file.writeFile(bytes)
    await file.sync()
    await file.close()
  }
  await Promise.all(paths.map(takeOne))
}

async function runIntake(paths: string[], folder: string): Promise<void> {
  const store = createFolderPhotoStore(folder)
  const takeOne = async (path: string) => {
    const taken = await takeInPhoto({ bytes: await readFile(path), store, limits: DEFAULT_PHOTO_LIMITS })
    if (!taken.ok) throw new Error(`A drawn photo was refused: ${JSON.stringify(taken.error)}`)
    const { widthPx, heightPx } = taken.value.rendition
    if (Math.max(widthPx, heightPx) !== DECODED_SIDE_PX) throw new Error('A drawn photo has no rendition of full size')
  }
  await Promise.all(paths.map(takeOne))
}

async function drawPhotos(folder: string): Promise<string[]> {
  const exif = { IFD2: { DateTimeOriginal: '2026:05:13 09:02:00', OffsetTimeOriginal: '+01:00' } }
  const place = {
    GPSLatitudeRef: 'S',
    GPSLatitude: '26/1 12/1 0/1',
    GPSLongitudeRef: 'E',
    GPSLongitude: '28/1 3/1 0/1',
  }
  const grain = (sigma: number, width: number, height: number) =>
    pictureEngine({
      create: { width, height, channels: 3, background: '#808080', noise: { type: 'gaussian', mean: 128, sigma } },
    })
  // grain of two sizes gives the bytes of real photos: about 3.5 MB, and 0.35 MB for the rendition
  const fine = await grain(13, SIZE.width, SIZE.height).png({ compressionLevel: 0 }).toBuffer()
  const coarse = await pictureEngine(await grain(55, 700, 525).png().toBuffer())
    .resize({ ...SIZE, fit: 'fill' })
    .png({ compressionLevel: 0 })
    .toBuffer()
  const paths: string[] = []
  for (let no = 0; no < PHOTO_COUNT; no++) {
    const scene = await grain(60, 24 + no, 18)
      .png()
      .toBuffer()
    const jpeg = await pictureEngine(scene)
      .resize({ ...SIZE, fit: 'fill', kernel: 'cubic' })
      .composite([
        { input: coarse, blend: 'soft-light' },
        { input: fine, blend: 'soft-light' },
      ])
      .withExif({ ...exif, IFD3: place })
      .withIccProfile('srgb')
      .withMetadata({ orientation: [1, 3, 6, 8][no % 4] ?? 1 })
      .jpeg({ quality: 90 })
      .toBuffer()
    const path = join(folder, `${no}.jpg`)
    await writeFile(path, jpeg)
    paths.push(path)
  }
  return paths
}

async function timeMs(run: () => Promise<void>): Promise<number> {
  const started = performance.now()
  await run()
  return performance.now() - started
}
