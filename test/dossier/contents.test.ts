import { beforeAll, describe, expect, test } from 'vitest'
import type { RepairState } from '@/lib/domain/fold/repair-state'
import { showReading } from '@/lib/domain/reading'
import { readingOf } from '@/lib/domain/records/show-value'
import { layOutDossier } from '@/lib/dossier/build-dossier'
import type { DossierInput } from '@/lib/dossier/dossier-input'
import type { LaidOut } from '@/lib/dossier/layout/placed'
import { SHEET } from '@/lib/dossier/layout/sheet'
import { SECTION_TITLES } from '@/lib/dossier/outline'
import { loadFaces } from '@/lib/dossier/pdf/faces'
import { attemptOf, criterionOf, FACTS, foldDemo, REPAIRS } from '@/test/demo/folded-demo'
import { inputByHand } from './input-by-hand'

const NO_PHOTOS: ReadonlySet<string> = new Set()
const words = (laidOut: LaidOut): string =>
  laidOut.sheets.flatMap((sheet) => sheet.items.flatMap((one) => (one.kind === 'text' ? [one.text] : []))).join(' ')
const inputOf = (state: RepairState): DossierInput => ({
  state,
  facts: FACTS,
  receipts: new Map(),
  sha256Of: new Map(),
  head: { kind: 'for review' },
  organisation: 'Plumbline-and-Thrice Inspection',
  isDemo: true,
})
const printed = new Map<string, { state: RepairState; laidOut: LaidOut; text: string }>()

beforeAll(async () => {
  const { metrics } = await loadFaces()
  for (const number of REPAIRS) {
    const state = foldDemo(number)
    const laidOut = layOutDossier(inputOf(state), NO_PHOTOS, metrics)
    printed.set(number, { state, laidOut, text: words(laidOut) })
  }
})
const of = (number: string) =>
  printed.get(number) ?? {
    state: foldDemo(number),
    laidOut: { structure: [], sheets: [], sectionSheets: [] },
    text: '',
  }

/** Every reading inside a record, as it is shown. */
function readingsIn(value: unknown): string[] {
  const reading = readingOf(value)
  if (reading) return [reading.kind === 'not-inspected' ? '–' : showReading(reading)]
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(readingsIn) : []
}

describe.each(REPAIRS)('%s', (number) => {
  test('prints every reading of every record of every attempt', () => {
    const { state, text } = of(number)
    const tokens = new Set(text.split(/[\s;,()/]+/))
    const missing = state.points.flatMap((point) =>
      point.attempts.flatMap((attempt) =>
        attempt.records.flatMap((one) =>
          readingsIn(one.record)
            .flatMap((shown) => shown.split(' '))
            .filter((shown) => !tokens.has(shown))
            .map((shown) => `${point.no}/${attempt.attempt} ${one.record.type} ${shown}`),
        ),
      ),
    )
    expect(missing).toEqual([])
  })
  test('prints every criterion’s found value and verdict beside each attempt’s title', () => {
    const { state, text } = of(number)
    const flat = text.replace(/\s+/g, '')
    for (const point of state.points)
      for (const attempt of point.attempts) {
        expect(flat).toContain(point.plan.title.replace(/\s+/g, ''))
        if (attempt.criteria.length > 0) expect(text).toContain(`verdict: ${attempt.verdict}`)
      }
  })
  test('has its sections in order, each starting on the sheet that the index names', () => {
    const { laidOut, text } = of(number)
    expect(laidOut.sectionSheets.map((one) => one.no)).toEqual(SECTION_TITLES.map((_, at) => String(at)))
    const sheets = laidOut.sectionSheets.map((one) => one.sheetNo)
    expect([...sheets].sort((a, b) => a - b)).toEqual(sheets)
    for (const { title, sheetNo } of laidOut.sectionSheets)
      expect(text).toMatch(new RegExp(`${title.split(',')[0]?.replace(/[()]/g, '')}[\\s\\S]*\\b${sheetNo}\\b`))
  })
  test('places nothing outside the sheet’s body and no word of a line over another', async () => {
    const { metrics } = await loadFaces()
    for (const sheet of of(number).laidOut.sheets) {
      const texts = sheet.items.flatMap((one) =>
        one.kind === 'text' ? [{ ...one, end: one.x + metrics.widthPt(one.text, one.face, one.sizePt) }] : [],
      )
      const outside = texts.filter(
        (one) =>
          one.x < SHEET.body.left - 0.1 ||
          one.end > SHEET.body.right + 0.1 ||
          one.y > SHEET.body.bottom ||
          one.y < SHEET.body.top,
      )
      expect(outside).toEqual([])
      const ordered = texts.sort((a, b) => a.y - b.y || a.x - b.x)
      expect(
        ordered.filter((one, index) => {
          const next = ordered[index + 1]
          return next && Math.abs(next.y - one.y) < 0.01 && next.x < one.end - 0.1
        }),
      ).toEqual([])
    }
  })
})

test('MD-0042 prints the failed attempts with their figures beside the one that passed', () => {
  const { text, state } = of('MD-0042')
  for (const figure of ['mean 71.50', 'mean 74.90', 'mean 78.40', 'lowest 63', 'lowest 69', 'lowest 76'])
    expect(text.replace(/\s+/g, ' ')).toContain(figure)
  expect(attemptOf(state, '16', 1).verdict).toBe('fail')
  expect(criterionOf(state, '16.mean', 3).verdict).toBe('pass')
  expect(text).toContain('Accepted under concession')
  expect(text).toContain('digits swapped, photo shows 74')
})

test('the corrected value stays readable, struck through, beside the new one', async () => {
  const { metrics } = await loadFaces()
  const laidOut = layOutDossier(inputByHand(), NO_PHOTOS, metrics)
  const items = laidOut.sheets.flatMap((sheet) => sheet.items)
  const old = items.filter((one) => one.kind === 'text' && one.text === '47')
  expect(old.length).toBeGreaterThan(0)
  const lines = items.filter((one) => one.kind === 'line' && one.tone === 'fail')
  expect(
    old.every(
      (text) =>
        text.kind === 'text' &&
        lines.some(
          (line) =>
            line.kind === 'line' &&
            Math.abs(line.x1 - text.x) < 0.5 &&
            line.y1 < text.y &&
            line.y1 > text.y - text.sizePt,
        ),
    ),
  ).toBe(true)
})
