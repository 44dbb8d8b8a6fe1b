import { describe, expect, test } from 'vitest'
import { hamming, likeness } from '@/lib/photo/likeness'
import { pictureEngine } from '@/lib/photo/picture-engine'
import { takeIn, takeInAccepted } from './drawn-photo'
import { hasSharedPhotos, listSharedPhotos, readSharedPhoto } from './shared-photos'

const lookOf = async (bytes: Uint8Array) => {
  const { intake } = await takeInAccepted(bytes)
  return { sha256: intake.sha256, ...intake.measures }
}

describe.skipIf(!hasSharedPhotos)('real photographs [needs photos beside this project]', () => {
  test('are all taken in, and the text beside them is not', { timeout: 120_000 }, async () => {
    const names = listSharedPhotos()
    expect(names.length).toBeGreaterThan(10)
    for (const name of names) {
      const taken = await takeIn(readSharedPhoto(name))
      if (name.endsWith('.md')) expect(taken).toEqual({ ok: false, error: { code: 'unknown-type' } })
      else expect(taken, name).toMatchObject({ ok: true })
    }
  })

  test.each([['jolla.jpg'], ['canon-ixus.jpg'], ['portrait_8.jpg']])('cut short are damaged: %s', async (name) => {
    const bytes = readSharedPhoto(name)
    for (const cutBytes of [2, 100, bytes.length >> 1]) {
      const taken = await takeIn(bytes.subarray(0, bytes.length - cutBytes))
      expect(taken).toMatchObject({
        ok: false,
        error: { code: 'damaged', reason: expect.stringContaining('premature end') },
      })
    }
  })

  test.each([
    ['landscape_3.jpg', 'landscape_1.jpg', 600, 450],
    ['landscape_6.jpg', 'landscape_1.jpg', 600, 450],
    ['portrait_5.jpg', 'portrait_8.jpg', 450, 600],
  ])('stand upright: %s as %s', async (turned, other, widthPx, heightPx) => {
    const { intake } = await takeInAccepted(readSharedPhoto(turned))
    expect(intake).toMatchObject({ widthPx, heightPx, rendition: { widthPx, heightPx } })
    const look = { sha256: intake.sha256, ...intake.measures }
    expect(likeness(look, await lookOf(readSharedPhoto(other)))).toBe('near')
    expect(hamming(look.dHash, (await lookOf(readSharedPhoto(other))).dHash)).toBeLessThanOrEqual(2)
  })

  test('two exposures of one scene are near alike', async () => {
    const [bracketed, plain] = await Promise.all(
      ['iphone_hdr_YES.jpg', 'iphone_hdr_NO.jpg'].map((name) => lookOf(readSharedPhoto(name))),
    )
    expect(bracketed && plain && likeness(bracketed, plain)).toBe('near')
  })

  test('of different scenes are never near alike', { timeout: 60_000 }, async () => {
    const scenes = listSharedPhotos().filter(
      (name) => name.endsWith('.jpg') && !/landscape_[36]|portrait_5|hdr_NO/.test(name),
    )
    const looks = await Promise.all(scenes.map(async (name) => lookOf(readSharedPhoto(name))))
    for (const [at, a] of looks.entries()) for (const b of looks.slice(at + 1)) expect(likeness(a, b)).toBeNull()
  })

  test.each(['jolla.jpg', 'DSCN0012.jpg', 'canon-ixus.jpg'])(
    'copied on are near alike to their original: %s',
    async (name) => {
      const bytes = readSharedPhoto(name)
      const { intake } = await takeInAccepted(bytes)
      const { widthPx, heightPx } = intake
      const crop = {
        left: Math.round(widthPx * 0.02),
        top: Math.round(heightPx * 0.02),
        width: Math.round(widthPx * 0.96),
        height: Math.round(heightPx * 0.96),
      }
      const copies = [
        pictureEngine(bytes).jpeg({ quality: 50 }),
        pictureEngine(bytes).resize(500).webp(),
        pictureEngine(bytes).linear(1.15, 0).jpeg(),
        pictureEngine(bytes).extract(crop).jpeg(),
      ]
      for (const copy of copies) {
        const taken = await takeInAccepted(await copy.toBuffer())
        expect(taken.intake.claims.isWithoutOriginal).toBe(true)
        expect(
          likeness(
            { sha256: intake.sha256, ...intake.measures },
            { sha256: taken.intake.sha256, ...taken.intake.measures },
          ),
        ).toBe('near')
      }
    },
  )

  test('lose sharpness when blurred, and dark ones show in the exposure', async () => {
    const bytes = readSharedPhoto('DSCN0025.jpg')
    const sharp = (await takeInAccepted(bytes)).intake.measures
    const blurred = (await takeInAccepted(await pictureEngine(bytes).blur(4).jpeg().toBuffer())).intake.measures
    const dark = (await takeInAccepted(await pictureEngine(bytes).linear(0.04, 0).jpeg().toBuffer())).intake.measures
    expect(blurred.sharpness).toBeLessThan((sharp.sharpness ?? 0) / 10)
    expect(dark.exposure.darkShare).toBeGreaterThan(0.5)
    expect(sharp.exposure.darkShare).toBeLessThan(0.05)
  })

  test('claim what their cameras wrote', async () => {
    const { intake } = await takeInAccepted(readSharedPhoto('iphone_hdr_NO.jpg'))
    expect(intake.claims).toMatchObject({
      takenAt: { kind: 'claimed', text: '2015-04-10T20:12:23.016', hasOffset: false },
      place: { kind: 'claimed', altitudeM: expect.closeTo(639.588, 2), longitudeDeg: expect.closeTo(-3.72475, 4) },
      camera: { make: 'Apple', model: 'iPhone 6' },
    })
    const tagless = await takeInAccepted(readSharedPhoto('image01137.jpg'))
    expect(tagless.intake.claims).toMatchObject({ metadata: 'absent', isWithoutOriginal: true })
  })
})
