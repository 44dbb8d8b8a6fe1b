import { createHash } from 'node:crypto'
import { describe, expect, test } from 'vitest'
import { hamming } from '@/lib/photo/likeness'
import { pictureEngine } from '@/lib/photo/picture-engine'
import { takeInPhoto } from '@/lib/photo/take-in'
import { drawScene, makeTemporaryStore, takeInAccepted } from './drawn-photo'

const digestOf = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex')

describe('a photo taken in', () => {
  test('is stored byte for byte with a rendition and a thumb, each under its digest', async () => {
    const bytes = await drawScene(2000, 1500)
      .withExif({ IFD0: { Make: 'Maker' } })
      .jpeg()
      .toBuffer()
    const { intake, original, rendition, thumb } = await takeInAccepted(bytes)
    expect(intake).toMatchObject({
      sha256: digestOf(bytes),
      sizeBytes: bytes.length,
      type: 'jpeg',
      widthPx: 2000,
      heightPx: 1500,
    })
    expect(original).toEqual(bytes)
    expect(intake.rendition).toEqual({
      sha256: digestOf(rendition),
      sizeBytes: rendition.length,
      widthPx: 1344,
      heightPx: 1008,
    })
    expect(intake.thumb).toEqual({ sha256: digestOf(thumb), sizeBytes: thumb.length, widthPx: 320, heightPx: 240 })
  })

  test('has a rendition that is a plain RGB JPEG without metadata', async () => {
    const bytes = await drawScene(1500, 1000)
      .withExif({ IFD0: { Make: 'Maker' } })
      .withIccProfile('p3')
      .jpeg()
      .toBuffer()
    const { rendition, thumb } = await takeInAccepted(bytes)
    for (const jpeg of [rendition, thumb]) {
      const stated = await pictureEngine(jpeg).metadata()
      expect(stated).toMatchObject({ format: 'jpeg', space: 'srgb', channels: 3 })
      expect([stated.exif, stated.icc, stated.xmp, stated.iptc, stated.orientation]).toEqual(Array(5).fill(undefined))
    }
  })

  test('is never enlarged, down to a single pixel', async () => {
    const { intake } = await takeInAccepted(await drawScene(1, 1).png().toBuffer())
    expect(intake).toMatchObject({
      widthPx: 1,
      heightPx: 1,
      rendition: { widthPx: 1, heightPx: 1 },
      measures: { sharpness: null },
    })
    const strip = await takeInAccepted(await drawScene(9000, 2).png().toBuffer())
    expect(strip.intake.rendition).toMatchObject({ widthPx: 1344, heightPx: 1 })
  })

  test('gives the same digests and measures every time', async () => {
    const bytes = await drawScene(1600, 1200).jpeg().toBuffer()
    const [first, second] = await Promise.all([takeInAccepted(bytes), takeInAccepted(bytes)])
    expect(second.intake).toEqual(first.intake)
  })

  test.each([
    ['grey JPEG', () => drawScene(600, 450).greyscale().jpeg()],
    ['CMYK JPEG', () => drawScene(600, 450).toColourspace('cmyk').jpeg()],
    ['progressive JPEG', () => drawScene(600, 450).jpeg({ progressive: true })],
    ['16-bit PNG', () => drawScene(600, 450).toColourspace('rgb16').png()],
    ['palette PNG', () => drawScene(600, 450).png({ palette: true })],
    ['WebP', () => drawScene(600, 450).webp()],
    ['JPEG of a wide colour space', () => drawScene(600, 450).withIccProfile('p3').jpeg()],
  ])('looks the same whatever its coding: %s', async (_case, draw) => {
    const plain = await takeInAccepted(await drawScene(600, 450).png().toBuffer())
    const { intake, rendition } = await takeInAccepted(await draw().toBuffer())
    expect(hamming(intake.measures.dHash, plain.intake.measures.dHash)).toBeLessThanOrEqual(3)
    expect(Math.abs(intake.measures.exposure.meanLevel - plain.intake.measures.exposure.meanLevel)).toBeLessThan(6)
    expect(await pictureEngine(rendition).metadata()).toMatchObject({ space: 'srgb', channels: 3 })
  })

  test('shows white where the picture is transparent', async () => {
    const glass = pictureEngine({ create: { width: 50, height: 50, channels: 4, background: '#00000000' } })
    const { intake } = await takeInAccepted(await glass.png().toBuffer())
    expect(intake.measures.exposure).toEqual({ meanLevel: 255, darkShare: 0, brightShare: 1 })
  })

  test.each([1, 2, 3, 4, 5, 6, 7, 8])('stands upright from orientation %i', async (orientation) => {
    const upright = await takeInAccepted(await drawScene(640, 480).jpeg({ quality: 95 }).toBuffer())
    const turned = await takeInAccepted(await turnedAway(orientation))
    expect(turned.intake).toMatchObject({
      widthPx: 640,
      heightPx: 480,
      rendition: { widthPx: 640, heightPx: 480 },
      claims: { orientationTag: orientation },
    })
    expect(hamming(turned.intake.measures.dHash, upright.intake.measures.dHash)).toBeLessThanOrEqual(2)
    expect(hamming(turned.intake.measures.pHash, upright.intake.measures.pHash)).toBeLessThanOrEqual(4)
  })

  test('throws when the store is lost, and needs of a store no more than put, read and has', async () => {
    const { store } = makeTemporaryStore()
    const lost = { ...store, add: async () => Promise.reject(new Error('disk full')) }
    const bytes = await drawScene(60, 40).jpeg().toBuffer()
    await expect(takeInPhoto({ bytes, store: lost, limits: { maxBytes: 1e6, maxPixels: 1e6 } })).rejects.toThrow(
      'disk full',
    )
  })
})

/** The scene as a camera held the other way stores it: turned or mirrored, with the tag that undoes it. */
async function turnedAway(orientation: number): Promise<Buffer> {
  const undo = {
    1: [0, false],
    2: [0, true],
    3: [180, false],
    4: [180, true],
    5: [270, true],
    6: [270, false],
    7: [90, true],
    8: [90, false],
  } as const
  const [angle, isMirrored] = undo[orientation as keyof typeof undo]
  const mirrored = await drawScene(640, 480).flop(isMirrored).png().toBuffer()
  return pictureEngine(mirrored).rotate(angle).withMetadata({ orientation }).jpeg({ quality: 95 }).toBuffer()
}
