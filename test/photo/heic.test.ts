import { tmpdir } from 'node:os'
import { describe, expect, test } from 'vitest'
import { hamming } from '@/lib/photo/likeness'
import { pictureEngine } from '@/lib/photo/picture-engine'
import { takeIn, takeInAccepted } from './drawn-photo'
import { hasSharedPhotos, readSharedPhoto } from './shared-photos'

describe.skipIf(!hasSharedPhotos)('a HEIC of a phone [needs photos beside this project]', { timeout: 120_000 }, () => {
  const bytes = hasSharedPhotos ? readSharedPhoto('IMG_5195.HEIC') : Buffer.alloc(0)
  /** The same file with its own rotation set to a quarter turn or two, anticlockwise. */
  const turned = (quarterTurns: number) => {
    const copy = Buffer.from(bytes)
    copy[copy.indexOf('irot') + 4] = quarterTurns
    return copy
  }

  test('is taken in with its claims and its colours brought to sRGB', async () => {
    const { intake, original, rendition } = await takeInAccepted(bytes)
    expect(original).toEqual(bytes)
    expect(intake).toMatchObject({
      type: 'heic',
      widthPx: 2566,
      heightPx: 3313,
      rendition: { widthPx: 1041, heightPx: 1344 },
      thumb: { widthPx: 248, heightPx: 320 },
      claims: {
        takenAt: { kind: 'claimed', text: '2021-04-11T15:47:53.054-05:00', hasOffset: true },
        place: { kind: 'claimed' },
      },
    })
    // the numbers of the same petal in the file's wide colour space are 191, 145, 233
    const petal = await pictureEngine(rendition).extract({ left: 395, top: 1030, width: 40, height: 40 }).toBuffer()
    const [red, green, blue] = (await pictureEngine(petal).stats()).channels.map((channel) => channel.mean)
    expect(red).toBeGreaterThan(197)
    expect(green).toBeLessThan(143.5)
    expect(blue).toBeGreaterThan(234.5)
  })

  test.each([1, 2, 3])('stands as its own rotation says, %i quarter turns', async (quarterTurns) => {
    const { intake } = await takeInAccepted(turned(quarterTurns))
    const upright = await takeInAccepted(bytes)
    const expected = await takeInAccepted(
      await pictureEngine(upright.rendition)
        .rotate(360 - 90 * quarterTurns)
        .png()
        .toBuffer(),
    )
    const isOnItsSide = quarterTurns % 2 === 1
    expect(intake).toMatchObject(isOnItsSide ? { widthPx: 3313, heightPx: 2566 } : { widthPx: 2566, heightPx: 3313 })
    expect(hamming(intake.measures.dHash, expected.intake.measures.dHash)).toBeLessThanOrEqual(4)
    expect(hamming(intake.measures.dHash, upright.intake.measures.dHash)).toBeGreaterThan(12)
  })

  test('is refused when it has too many pixels, before it is decoded', async () => {
    const taken = await takeIn(bytes, { maxBytes: 5e6, maxPixels: 2566 * 3313 - 1 })
    expect(taken).toMatchObject({ ok: false, error: { code: 'too-many-pixels', widthPx: 2566, heightPx: 3313 } })
  })

  test('is refused as damaged when cut, and other photos are taken in after it', async () => {
    for (const keptBytes of [40, 1500, 5000, bytes.length >> 1, bytes.length - 10]) {
      expect(await takeIn(bytes.subarray(0, keptBytes))).toMatchObject({ ok: false, error: { code: 'damaged' } })
    }
    expect(await takeIn(bytes)).toMatchObject({ ok: true })
  })

  test('throws when the process was started where the decoder is not', async () => {
    const home = process.cwd()
    process.chdir(tmpdir())
    try {
      await expect(takeIn(bytes)).rejects.toThrow('The HEIC decoder is missing')
    } finally {
      process.chdir(home)
    }
    expect(await takeIn(bytes)).toMatchObject({ ok: true })
  })

  test('never crashes whatever bytes are changed', async () => {
    for (let at = 8; at < 3200; at += 331) {
      const changed = Buffer.from(bytes)
      changed[at] = (changed[at] ?? 0) ^ 0xff
      const taken = await takeIn(changed)
      if (!taken.ok) expect(['damaged', 'unknown-type', 'too-many-pixels']).toContain(taken.error.code)
    }
  })
})
