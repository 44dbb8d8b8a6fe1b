import { createHash } from 'node:crypto'
import sharp from 'sharp'
import { expect, test } from 'vitest'
import { likeness } from '@/lib/photo/likeness'
import { hashLook } from '@/lib/photo/perceptual-hash'
import { DEFAULT_PHOTO_LIMITS } from '@/lib/photo/photo-intake'
import { takeInPhoto } from '@/lib/photo/take-in'
import { demoDrawings } from '@/lib/server/demo/drawn-photo-book'
import type { PhotoDrawing } from '@/lib/server/demo/photo-drawing'
import { drawPhoto, PHOTO_SIZE, svgOf } from '@/lib/server/demo/pictures/draw-photo'

const drawings = demoDrawings()
const held = new Map<string, Uint8Array>()
const memory = {
  put: async (name: string, bytes: Uint8Array | { readonly path: string }) =>
    void (bytes instanceof Uint8Array && held.set(name, bytes)),
  read: async (name: string) => held.get(name) ?? null,
  has: async (name: string) => held.has(name),
}

/** A small picture of a drawing: enough for its look, and quick. */
async function lookOf(drawing: PhotoDrawing) {
  const { data, info } = await sharp(Buffer.from(svgOf(drawing, { width: 240, height: 180 })))
    .flatten()
    .greyscale()
    .raw()
    .toBuffer({ resolveWithObject: true })
  return {
    sha256: createHash('sha256').update(drawing.key).digest('hex'),
    ...(await hashLook({ pixels: data, widthPx: info.width, heightPx: info.height, channels: 1 })),
  }
}

test('no drawn photo looks like another', { timeout: 120_000 }, async () => {
  const looks = await Promise.all(drawings.map(async (drawing) => ({ key: drawing.key, look: await lookOf(drawing) })))
  expect(looks.length).toBeGreaterThan(100)
  expect(
    looks.flatMap((a, at) =>
      looks
        .slice(0, at)
        .filter((b) => likeness(a.look, b.look) !== null)
        .map((b) => `${a.key} ${b.key}`),
    ),
  ).toEqual([])
})

test('a drawn photo is the same bytes twice, and intake reads its time, offset and place', {
  timeout: 60_000,
}, async () => {
  const drawing = drawings.find((one) => one.key === 'MD-0041/16/1/1')
  if (!drawing) throw new Error('the drawing of C-12 is gone')
  const bytes = await drawPhoto(drawing)
  expect(Buffer.compare(bytes, await drawPhoto(drawing))).toBe(0)
  const taken = await takeInPhoto({ bytes, store: memory, limits: DEFAULT_PHOTO_LIMITS })
  expect(taken).toMatchObject({
    ok: true,
    value: {
      type: 'jpeg',
      widthPx: PHOTO_SIZE.width,
      heightPx: PHOTO_SIZE.height,
      claims: {
        isWithoutOriginal: false,
        takenAt: { kind: 'claimed', text: drawing.takenAt, hasOffset: true },
        place: { kind: 'claimed', latitudeDeg: 53.9 },
      },
    },
  })
})
