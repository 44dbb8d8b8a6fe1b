import { expect, test } from 'vitest'
import { greyOf, hintOf } from '@/lib/capture/photo-hint'
import type { GreyPicture } from '@/lib/domain/photo/sharpness'
import { measurePhoto } from '@/lib/photo/photo-measures'

const SIDE = 64

function picture(levelAt: (x: number, y: number) => number): GreyPicture {
  const pixels = new Uint8Array(SIDE * SIDE)
  for (let at = 0; at < pixels.length; at++) pixels[at] = levelAt(at % SIDE, Math.floor(at / SIDE))
  return { pixels, widthPx: SIDE, heightPx: SIDE }
}

const board = picture((x, y) => (((x >> 2) + (y >> 2)) % 2 === 0 ? 40 : 210))
const slope = picture((x, y) => 60 + x + y)

test('edges look well, a slope without any looks blurred, little and much light say so', () => {
  expect(hintOf(board).looks).toBe('well')
  expect(hintOf(slope).looks).toBe('blurred')
  expect(hintOf(picture((x) => (x % 2) * 20)).looks).toBe('dark')
  expect(hintOf(picture((x) => 255 - (x % 2) * 20)).looks).toBe('too bright')
})

test('sharpness and mean level are those that the server measures', () => {
  for (const grey of [board, slope]) {
    const measured = measurePhoto({ ...grey, channels: 1 })
    expect(hintOf(grey).sharpness).toBeCloseTo(measured.sharpness ?? Number.NaN, 6)
    expect(hintOf(grey).meanLevel).toBeCloseTo(measured.exposure.meanLevel, 6)
  }
})

test('grey is what the eye makes of the colours, opacity left out', () => {
  const grey = greyOf([255, 255, 255, 0, 0, 0, 0, 255, 255, 0, 0, 255, 0, 255, 0, 255], 2, 2)
  expect([...grey.pixels]).toEqual([255, 0, 54, 182])
})

test('a picture without edges to look at is a bug of the caller', () => {
  expect(() => hintOf({ pixels: new Uint8Array(4), widthPx: 2, heightPx: 2 })).toThrow(RangeError)
})
