import { describe, expect, test } from 'vitest'
import { type Block, cell } from '@/lib/dossier/blocks'
import type { FontMetrics } from '@/lib/dossier/layout/font-metrics'
import { legible } from '@/lib/dossier/layout/font-metrics'
import { layOut } from '@/lib/dossier/layout/lay-out'
import type { Placed } from '@/lib/dossier/layout/placed'
import { SHEET } from '@/lib/dossier/layout/sheet'
import { breakLines } from '@/lib/dossier/layout/text-lines'
import { titleBlock } from '@/lib/dossier/layout/title-block'

/** Every character half as wide as it is high; no character above U+2FFF. */
const metrics: FontMetrics = {
  widthPt: (text, _face, sizePt) => [...text].length * sizePt * 0.5,
  hasGlyph: (codePoint) => codePoint < 0x3000,
}
const lay = (...blocks: Block[]) => layOut([{ no: '1', title: 'One', blocks }], metrics)
const texts = (items: readonly Placed[]): string[] => items.flatMap((one) => (one.kind === 'text' ? [one.text] : []))
const numbered = (count: number): Block => ({
  kind: 'table',
  columns: [{ title: 'No.' }, { title: 'Text' }],
  rows: Array.from({ length: count }, (_, at) => [cell(`row-${at}`), cell('words of a row')]),
})

describe('lines', () => {
  test('break at spaces and never exceed the width', () => {
    const lines = breakLines([{ text: 'the wall at the leak is through' }], 50, 10, metrics)
    expect(lines.map((line) => line.runs.map((run) => run.text).join(''))).toEqual([
      'the wall',
      'at the',
      'leak is',
      'through',
    ])
    for (const line of lines) expect(line.widthPt).toBeLessThanOrEqual(50)
  })
  test('a digest breaks between characters and loses none', () => {
    const digest = '0123456789abcdef'.repeat(4)
    const lines = breakLines([{ text: digest, face: 'mono' }], 60, 10, metrics)
    expect(lines.map((line) => line.runs.map((run) => run.text).join('')).join('')).toBe(digest)
  })
  test('a character without a glyph is written out', () => {
    expect(legible('a漢\u0007', 'regular', metrics)).toBe('a[U+6F22][U+0007]')
  })
})

describe('tables', () => {
  test('break between rows and repeat their head on every sheet; no row is lost', () => {
    const { sheets } = lay(numbered(150))
    expect(sheets.length).toBeGreaterThan(2)
    for (const sheet of sheets) expect(texts(sheet.items)).toContain('No.')
    expect(sheets.flatMap((sheet) => texts(sheet.items)).filter((one) => one.startsWith('row-'))).toEqual(
      Array.from({ length: 150 }, (_, at) => `row-${at}`),
    )
  })
  test('a row taller than a sheet goes on over the next', () => {
    const words = Array.from({ length: 3000 }, (_, at) => `w${at}`)
    const { sheets } = lay({ kind: 'table', columns: [{ title: 'A' }], rows: [[cell(words.join(' '))]] })
    expect(sheets.length).toBeGreaterThan(1)
    expect(
      sheets
        .flatMap((sheet) => texts(sheet.items))
        .join(' ')
        .split(' ')
        .filter((one) => one.startsWith('w')),
    ).toEqual(words)
  })
  test('a small table is not broken, and its heading goes with it', () => {
    for (let fill = 38; fill < 60; fill += 1) {
      const { sheets } = lay(numbered(fill), { kind: 'heading', text: 'Readings' }, numbered(4))
      const own = sheets.filter((sheet) => texts(sheet.items).includes('Readings'))
      expect(own).toHaveLength(1)
      expect(
        texts(own[0]?.items ?? [])
          .slice(texts(own[0]?.items ?? []).indexOf('Readings'))
          .filter((one) => one.startsWith('row-')),
      ).toHaveLength(4)
    }
  })
  test('stay within the body of the sheet', () => {
    for (const sheet of lay(numbered(150)).sheets)
      for (const one of sheet.items)
        if (one.kind === 'box') {
          expect(one.x + one.widthPt).toBeLessThanOrEqual(SHEET.body.right + 0.01)
          expect(one.y + one.heightPt).toBeLessThanOrEqual(SHEET.body.bottom + 0.01)
        }
  })
})

test('a heading never stands alone at the foot of a sheet', () => {
  for (let fill = 30; fill < 60; fill += 1) {
    const { sheets } = lay(
      numbered(fill),
      { kind: 'section', no: '5', text: 'Section' },
      { kind: 'title', eyebrow: 'Point 16', text: 'Hardness', sign: null, state: null },
      numbered(20),
    )
    const last = sheets.find((sheet) => texts(sheet.items).includes('Hardness'))
    expect(
      texts(last?.items ?? [])
        .slice(texts(last?.items ?? []).indexOf('Hardness'))
        .some((one) => one.startsWith('row-')),
    ).toBe(true)
  }
})

test('the title block names repair, line, issue and sheet, and keeps a long line inside its cell', () => {
  const line = 'MDW-250-RM2-0310-A-VERY-LONG-LINE-NUMBER'
  const items = titleBlock({ repair: 'MD-0042', line, issue: 'rev 1, 2026-05-30, final', note: '' }, 3, 31, metrics)
  expect(texts(items)).toEqual(
    expect.arrayContaining(['Dossier of repair', 'MD-0042', 'Line', 'Issue', 'Sheet', '3 of 31']),
  )
  expect(texts(items).join('')).toContain(line)
})
