import { readdirSync } from 'node:fs'
import { crc32 } from 'node:zlib'
import { describe, expect, test } from 'vitest'
import { pictureEngine } from '@/lib/photo/picture-engine'
import { takeInPhoto } from '@/lib/photo/take-in'
import { drawScene, makeTemporaryStore, takeIn } from './drawn-photo'

const limits = { maxBytes: 1_000_000, maxPixels: 400 * 300 }
const damaged = { ok: false, error: { code: 'damaged', reason: expect.stringMatching(/^.{1,200}$/) } }

/** A picture whose header states another size. */
async function withStatedSize(type: 'jpeg' | 'png', widthPx: number, heightPx: number): Promise<Buffer> {
  const bytes = await drawScene(40, 30)[type]().toBuffer()
  if (type === 'png') {
    bytes.writeUInt32BE(widthPx, 16)
    bytes.writeUInt32BE(heightPx, 20)
    bytes.writeUInt32BE(crc32(bytes.subarray(12, 29)), 29)
  } else {
    const frame = bytes.indexOf(Buffer.from([0xff, 0xc0]))
    bytes.writeUInt16BE(heightPx, frame + 5)
    bytes.writeUInt16BE(widthPx, frame + 7)
  }
  return bytes
}

test('a photo with stray bytes between its segments is taken in: nothing of the picture is missing', async () => {
  const bytes = await drawScene(400, 300).jpeg().toBuffer()
  const frame = bytes.indexOf(Buffer.from([0xff, 0xc0]))
  const padded = Buffer.concat([bytes.subarray(0, frame), Buffer.alloc(40, 0x11), bytes.subarray(frame)])
  await expect(pictureEngine(padded, { failOn: 'warning' }).raw().toBuffer()).rejects.toThrow('extraneous bytes')
  expect(await takeIn(padded)).toMatchObject({ ok: true })
})

describe('a photo is refused', () => {
  test('empty, when it has no bytes', async () => {
    expect(await takeIn(Buffer.alloc(0))).toEqual({ ok: false, error: { code: 'empty' } })
  })

  test('too large, one byte over the limit and not at it', async () => {
    const bytes = await drawScene(400, 300).jpeg().toBuffer()
    const at = { maxBytes: bytes.length, maxPixels: 1e6 }
    expect(await takeIn(bytes, at)).toMatchObject({ ok: true })
    const over = { maxBytes: bytes.length - 1, maxPixels: 1e6 }
    expect(await takeIn(bytes, over)).toEqual({
      ok: false,
      error: { code: 'too-large', sizeBytes: bytes.length, maxBytes: bytes.length - 1 },
    })
  })

  test('unknown type, when it is another kind of file', async () => {
    const unknown = { ok: false, error: { code: 'unknown-type' } }
    expect(await takeIn(Buffer.from('%PDF-1.7 photo.jpg'))).toEqual(unknown)
    expect(await takeIn(Buffer.from('<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"/>'))).toEqual(unknown)
    expect(await takeIn(await drawScene(40, 30).gif().toBuffer())).toEqual(unknown)
  })

  test('too many pixels, one row over the limit and not at it', async () => {
    expect(await takeIn(await drawScene(400, 300).jpeg().toBuffer(), limits)).toMatchObject({ ok: true })
    const tall = await drawScene(400, 301).withMetadata({ orientation: 6 }).jpeg().toBuffer()
    const error = { code: 'too-many-pixels', widthPx: 301, heightPx: 400, maxPixels: limits.maxPixels }
    expect(await takeIn(tall, limits)).toEqual({ ok: false, error })
  })

  test.each([
    ['PNG', 'png', 60_000],
    ['JPEG', 'jpeg', 65_000],
  ] as const)(
    'too many pixels, before any is decoded, when a small %s states a vast size',
    async (_case, type, sidePx) => {
      const bomb = await withStatedSize(type, sidePx, sidePx)
      const before = process.memoryUsage().rss
      expect(await takeIn(bomb)).toMatchObject({
        ok: false,
        error: { code: 'too-many-pixels', widthPx: sidePx, heightPx: sidePx },
      })
      expect(process.memoryUsage().rss - before).toBeLessThan(100e6)
    },
  )

  test('damaged, when the header states more rows than there are', async () => {
    expect(await takeIn(await withStatedSize('png', 40, 900))).toEqual(damaged)
    expect(await takeIn(await withStatedSize('jpeg', 40, 900))).toEqual(damaged)
  })

  test('damaged, when a stretch from the middle of a JPEG is lost', async () => {
    const bytes = await drawScene(800, 600).jpeg().toBuffer()
    const lost = Buffer.concat([bytes.subarray(0, bytes.length * 0.5), bytes.subarray(bytes.length * 0.8)])
    expect(await takeIn(lost)).toEqual(damaged)
  })

  test.each(['jpeg', 'png', 'webp'] as const)('damaged, wherever a %s is cut', async (type) => {
    const bytes = await drawScene(800, 600)[type]().toBuffer()
    for (const share of [0.02, 0.1, 0.5, 0.9, 0.97])
      expect(await takeIn(bytes.subarray(0, Math.max(20, bytes.length * share)))).toEqual(damaged)
  })

  test('and nothing of it is stored', async () => {
    const { store, folder } = makeTemporaryStore()
    const bytes = (await drawScene(800, 600).jpeg().toBuffer()).subarray(0, 5000)
    expect(await takeInPhoto({ bytes, store, limits })).toMatchObject({ ok: false })
    expect(readdirSync(folder)).toEqual([])
  })
})
