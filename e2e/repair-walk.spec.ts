import { execFileSync } from 'node:child_process'
import { mkdtempSync, readFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, test } from '@playwright/test'
import { assess, prepare } from './steps/assess-and-prepare'
import { arrestAndFill, surface } from './steps/before-wrap'
import { openRepair } from './steps/open-repair'
import { signInAs } from './steps/people'
import {
  FILLER_AFTER,
  FILLER_BEFORE,
  FILLER_HARDNESS,
  FILLER_MIX,
  HARDNESS_FIRST,
  HARDNESS_SECOND,
  MIXES,
  PLIES,
  PROFILE,
  SALTS,
  WALL,
} from './steps/repair-0042'
import { failReworkAndClose } from './steps/rework'
import { QI, Walk } from './steps/walk'
import { cure, wrap } from './steps/wrap-and-cure'

const NUMBER = process.env.E2E_NUMBER ?? 'MD-0142'

test('an inspector takes one repair from materials to hardness on a phone, through a failed test, a rework and a nonconformance, to its dossier', async ({
  page,
}) => {
  test.setTimeout(900_000)
  const walk = new Walk(page, NUMBER, '05-19')
  walk.at('07:30')
  await signInAs(page, QI)
  await openRepair(page, NUMBER)
  await assess(walk)
  await prepare(walk)
  await surface(walk)
  await arrestAndFill(walk)
  await wrap(walk)
  await cure(walk)
  await failReworkAndClose(walk)
  await signInAs(page, QI)
  await page.goto(`/repairs/${NUMBER}/dossier`)
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('link', { name: 'Copy for review' }).click(),
  ])
  const file = join(mkdtempSync(join(tmpdir(), 'underwrap-dossier-')), 'dossier.pdf')
  await download.saveAs(file)
  expect(readFileSync(file).subarray(0, 5).toString('latin1')).toBe('%PDF-')
  checkText(execFileSync('pdftotext', ['-layout', file, '-'], { encoding: 'utf8', maxBuffer: 1 << 26 }))
})

/** Every reading and each verdict stands in the dossier's text. */
function checkText(text: string): void {
  const words = new Set(text.split(/\s+/).map((word) => word.replace(/[;,]$/, '')))
  const readings = [
    ...WALL,
    ...SALTS,
    ...PROFILE,
    ...FILLER_BEFORE,
    ...FILLER_AFTER,
    ...FILLER_HARDNESS,
    ...HARDNESS_FIRST,
    ...HARDNESS_SECOND,
    ...PLIES.flatMap(([, started, ended, overlap, offset]) => [started, ended, overlap, offset]),
    ...MIXES.flatMap(([, , , a, b]) => [a, b]),
    ...FILLER_MIX,
    '15.3',
    '15.9',
    '12.9',
  ]
  expect(readings.filter((reading) => reading !== '12.9' && !words.has(reading))).toEqual([])
  for (const figure of ['71.50', '78.40', '78.8', 'dry', '38.1', 'C-6', 'rework']) expect(text).toContain(figure)
  for (const grid of [HARDNESS_FIRST, HARDNESS_SECOND])
    for (let row = 0; row < 4; row += 1)
      expect(text).toMatch(new RegExp(grid.slice(row * 5, row * 5 + 5).join('[^0-9\\n]+')))
  expect(text).toMatch(/Fail/)
  expect(text).toMatch(/Not proven/)
  expect(text.match(/Pass/g)?.length ?? 0).toBeGreaterThan(40)
}
