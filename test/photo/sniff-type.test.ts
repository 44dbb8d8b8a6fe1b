import { expect, test } from 'vitest'
import { sniffType } from '@/lib/photo/sniff-type'
import { drawScene } from './drawn-photo'

const heif = (major: string, ...compatible: string[]) => {
  const brands = Buffer.from(`ftyp${major}\0\0\0\0${compatible.join('')}`, 'latin1')
  const length = Buffer.alloc(4)
  length.writeUInt32BE(brands.length + 4)
  return Buffer.concat([length, brands, Buffer.from('heicheic')])
}

test('a photo is told by its bytes', async () => {
  const scene = drawScene(40, 30)
  expect(sniffType(await scene.clone().jpeg().toBuffer())).toBe('jpeg')
  expect(sniffType(await scene.clone().png().toBuffer())).toBe('png')
  expect(sniffType(await scene.clone().webp().toBuffer())).toBe('webp')
  expect(sniffType(await scene.clone().gif().toBuffer())).toBeNull()
  expect(sniffType(await scene.clone().tiff().toBuffer())).toBeNull()
  expect(sniffType(await scene.clone().avif({ effort: 0 }).toBuffer())).toBeNull()
})

test.each([
  ['heic', heif('heic', 'mif1'), 'heic'],
  ['mif1 with heic', heif('mif1', 'mif1', 'heic'), 'heic'],
  ['mif1 with avif: the heic after the box does not count', heif('mif1', 'avif'), null],
  ['avif', heif('avif', 'mif1'), null],
  ['a video', heif('isom', 'mp42'), null],
])('a HEIF file is told by its brands: %s', (_case, bytes, type) => {
  expect(sniffType(bytes)).toBe(type)
})

test.each([
  ['no bytes', Buffer.alloc(0)],
  ['two bytes of a JPEG', Buffer.from([0xff, 0xd8])],
  ['text', Buffer.from('not a photo at all')],
  ['a RIFF that is sound', Buffer.from('RIFF\0\0\0\0WAVEfmt ')],
  ['ftyp and no brand', Buffer.from('\0\0\0\x08ftyp', 'latin1')],
])('anything else is no photo: %s', (_case, bytes) => {
  expect(sniffType(bytes)).toBeNull()
})
