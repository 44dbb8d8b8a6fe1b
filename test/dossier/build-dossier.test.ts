import { createHash } from 'node:crypto'
import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, test } from 'vitest'
import { buildDossier } from '@/lib/dossier/build-dossier'
import { inputByHand, withPhotos } from './input-by-hand'
import { makeJpeg, storeOf } from './jpeg-for-tests'
import { readPdf } from './pdf-text'

const folder = mkdtempSync(join(tmpdir(), 'dossier-test-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))
const at = (name: string): string => join(folder, name)
const nothing = storeOf({})

describe('the file', () => {
  test('states its digest and size, and every object lies where the table says', async () => {
    const built = await buildDossier(inputByHand(), nothing, at('a.pdf'))
    const bytes = readFileSync(at('a.pdf'))
    expect(built.sha256).toBe(createHash('sha256').update(bytes).digest('hex'))
    expect(built.sizeBytes).toBe(bytes.length)
    const pdf = readPdf(bytes)
    expect(pdf.wrongOffsets).toEqual([])
    expect(pdf.pages).toHaveLength(built.pageCount)
    expect(pdf.text).not.toContain('\uFFFD')
  })
  test('is the same, byte for byte, for the same input, and another for another moment', async () => {
    const input = inputByHand()
    const first = await buildDossier(input, nothing, at('b1.pdf'))
    const second = await buildDossier(structuredClone(input), nothing, at('b2.pdf'))
    const later = await buildDossier(
      { ...input, state: { ...input.state, asOf: '2026-05-30T08:00:00+01:00' } },
      nothing,
      at('b3.pdf'),
    )
    expect(second.sha256).toBe(first.sha256)
    expect(later.sha256).not.toBe(first.sha256)
  })
  test('says of itself that it is for review, or which revision it is and what it supersedes', async () => {
    await buildDossier(inputByHand(), nothing, at('c1.pdf'))
    expect(readPdf(readFileSync(at('c1.pdf'))).pages[0]).toContain('for review, not issued')
    await buildDossier(
      { ...inputByHand(), isDemo: true, head: { kind: 'issue', revision: 0, purpose: 'for test', changes: [] } },
      nothing,
      at('c2.pdf'),
    )
    const cover = readPdf(readFileSync(at('c2.pdf'))).pages[0]
    expect(cover).toContain('rev 0')
    expect(cover).toContain('for test')
    expect(cover).toContain('Demonstration record')
    expect(cover).toContain('does not authorise work')
  })
  test('lists what is missing on its cover and in its index', async () => {
    const built = await buildDossier(inputByHand(), nothing, at('d.pdf'))
    expect(built.missing).toEqual(['19: Final acceptance has no record.'])
    const pdf = readPdf(readFileSync(at('d.pdf')))
    expect(pdf.pages[0]).toContain('Final acceptance has no record.')
    expect(pdf.pages[1]).toContain('Final acceptance has no record.')
  })
})

describe('photos', () => {
  test('go in unchanged: colour and grey', async () => {
    const pictures = [await makeJpeg('#a03020'), await makeJpeg('#808080', true)]
    const objects = Object.fromEntries(pictures.map((one) => [one.sha256, one.bytes]))
    const built = await buildDossier(withPhotos(inputByHand(), '16', pictures), storeOf(objects), at('e.pdf'))
    expect(built.unreadablePhotos).toEqual([])
    const bytes = readFileSync(at('e.pdf'))
    for (const one of pictures) expect(bytes.includes(one.bytes)).toBe(true)
    expect(bytes.includes('/ColorSpace /DeviceGray')).toBe(true)
    expect(readPdf(bytes).text).toContain('Gauge at C-6')
  })
  test('one that is missing, or is not what its digest says, is stated and never left out', async () => {
    const [good, gone, changed] = [await makeJpeg('#111111'), await makeJpeg('#222222'), await makeJpeg('#333333')]
    const store = storeOf({ [good.sha256]: good.bytes, [changed.sha256]: good.bytes })
    const built = await buildDossier(withPhotos(inputByHand(), '16', [good, gone, changed]), store, at('f.pdf'))
    expect(built.unreadablePhotos).toEqual([gone.sha256, changed.sha256].sort())
    expect(readPdf(readFileSync(at('f.pdf'))).text.match(/picture is missing or/g)?.length).toBeGreaterThanOrEqual(2)
  })
  test('progress counts each photo as it is written', async () => {
    const pictures = [await makeJpeg('#405060'), await makeJpeg('#605040')]
    const seen: number[] = []
    await buildDossier(
      withPhotos(inputByHand(), '16', pictures),
      storeOf(Object.fromEntries(pictures.map((one) => [one.sha256, one.bytes]))),
      at('g.pdf'),
      (progress) => progress.step === 'writing' && seen.push(progress.photosWritten),
    )
    expect(seen).toEqual([1, 2])
  })
  test('a character that no typeface has is written out by its number', async () => {
    const picture = await makeJpeg('#908070')
    await buildDossier(
      withPhotos(inputByHand(), '16', [picture], 'Gauge \u{1F4F7} 漢'),
      storeOf({ [picture.sha256]: picture.bytes }),
      at('h.pdf'),
    )
    const { text } = readPdf(readFileSync(at('h.pdf')))
    expect(text).toContain('[U+1F4F7]')
    expect(text).toContain('[U+6F22]')
  })
})
