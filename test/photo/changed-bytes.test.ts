import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { readPhotoClaims } from '@/lib/photo/photo-claims'
import { pictureEngine } from '@/lib/photo/picture-engine'
import { isSrgbProfile } from '@/lib/photo/srgb-profile'
import { runsAsked } from '../runs'
import { drawScene, takeIn } from './drawn-photo'
import { hasSharedPhotos, readSharedPhoto } from './shared-photos'

const CODES = ['empty', 'too-large', 'unknown-type', 'too-many-pixels', 'damaged']
const exif = {
  IFD0: { Make: 'Maker' },
  IFD2: { DateTimeOriginal: '2026:05:13 09:02:00' },
  IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '51/1 30/1 0/1' },
}

/** Some bytes changed, most of them near the start where the structure is, and perhaps the end cut off. */
function harm(bytes: Uint8Array) {
  const place = fc.oneof(fc.nat(Math.min(700, bytes.length - 1)), fc.nat(bytes.length - 1))
  const changes = fc.array(fc.tuple(place, fc.nat(255)), { minLength: 1, maxLength: 12 })
  const kept = fc.oneof(
    { weight: 3, arbitrary: fc.constant(bytes.length) },
    { weight: 1, arbitrary: fc.nat(bytes.length) },
  )
  return fc.tuple(changes, kept).map(([list, keptBytes]) => {
    const harmed = Uint8Array.from(bytes)
    for (const [at, value] of list) harmed[at] = value
    return harmed.subarray(0, keptBytes)
  })
}

async function expectAnswer(bytes: Uint8Array): Promise<void> {
  const taken = await takeIn(bytes, { maxBytes: 5_000_000, maxPixels: 2_000_000 })
  if (taken.ok) expect(taken.value.rendition.sizeBytes).toBeGreaterThan(0)
  else expect(CODES).toContain(taken.error.code)
  JSON.stringify(taken, (_key, value) => {
    if (typeof value === 'number') expect(Number.isFinite(value)).toBe(true)
    return value
  })
}

describe('changed bytes are taken in or refused and never crash', () => {
  test.each([
    ['JPEG', () => drawScene(300, 200).withExif(exif).withIccProfile('p3').jpeg()],
    ['PNG', () => drawScene(300, 200).withExif(exif).withIccProfile('p3').png()],
    ['WebP', () => drawScene(300, 200).withExif(exif).webp()],
  ])('%s', async (_case, draw) => {
    await fc.assert(fc.asyncProperty(harm(await draw().toBuffer()), expectAnswer), { numRuns: runsAsked(150) })
  })

  test.skipIf(!hasSharedPhotos)('a real camera’s JPEG [needs photos beside this project]', async () => {
    await fc.assert(fc.asyncProperty(harm(readSharedPhoto('DSCN0010.jpg')), expectAnswer), { numRuns: runsAsked(100) })
  })

  test('metadata alone', async () => {
    const stated = await drawScene(30, 20).withExif(exif).withIccProfile('srgb').jpeg().toBuffer()
    const header = await pictureEngine(stated).metadata()
    const block = header.exif ?? Buffer.alloc(1)
    const icc = header.icc ?? Buffer.alloc(1)
    await fc.assert(
      fc.asyncProperty(harm(block), async (bytes) => {
        expect(['read', 'absent', 'unreadable']).toContain((await readPhotoClaims(bytes)).metadata)
      }),
      { numRuns: runsAsked(500) },
    )
    fc.assert(
      fc.property(harm(icc), (bytes) => {
        expect(typeof isSrgbProfile(bytes)).toBe('boolean')
      }),
      { numRuns: runsAsked(500) },
    )
  })
})
