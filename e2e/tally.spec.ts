import { readFileSync } from 'node:fs'
import { expect, type Page, test } from '@playwright/test'
import { prepareZXingModule, readBarcodes } from 'zxing-wasm/reader'
import { demoPerson } from '@/lib/server/demo/demo-people'
import { assess } from './steps/assess-and-prepare'
import { dossierText } from './steps/dossier-text'
import { openRepair } from './steps/open-repair'
import { checkPaperAs, keyPaper, keyPaperTime, UNCHECKED } from './steps/paper'
import { release, sign, signInAs, submit } from './steps/people'
import { uploadDemandedPhotos } from './steps/photos'
import { RecordFormHand } from './steps/record-form'
import { L1, QI, T1, Walk } from './steps/walk'

// the code of a sheet is drawn in modules of 0.7 mm: read as a phone reads it, closer than a screen draws
test.use({ deviceScaleFactor: 3 })

const NUMBER = process.env.E2E_TALLY_NUMBER ?? 'MD-0148'

/** The address in the code of a printed sheet, read from a picture of it. */
async function addressOnSheet(page: Page): Promise<{ address: string; picture: Buffer }> {
  prepareZXingModule({
    overrides: {
      wasmBinary: new Uint8Array(readFileSync('node_modules/zxing-wasm/dist/reader/zxing_reader.wasm')).buffer,
    },
  })
  const picture = await page.locator('.tally-head figure').screenshot()
  const [found] = await readBarcodes(new Uint8Array(picture), { formats: ['QRCode'], tryHarder: true })
  if (!found) throw new Error('no code was read from the sheet')
  return { address: found.text, picture }
}

test('a sheet is printed, its code leads to its form, the copy is checked by a second person, and only then the hold is released', async ({
  page,
}) => {
  test.setTimeout(900_000)
  const walk = new Walk(page, NUMBER, '05-21')
  walk.at('07:30')
  await signInAs(page, QI)
  await openRepair(page, NUMBER)
  await assess(walk)

  await walk.open('02')
  await page.getByRole('link', { name: 'Print a tally sheet' }).click()
  await expect(page.getByText(`Tally sheet ${NUMBER}/02/1/260521-`)).toBeVisible()
  await expect(page.getByText('This sheet remains the original: keep it.')).toBeVisible()
  const first = await addressOnSheet(page)
  expect(new URL(first.address).pathname).toBe(`/repairs/${NUMBER}/points/02/transcribe`)

  walk.at('08:40')
  await page.goto(first.address)
  await page.getByRole('link', { name: 'Permit, isolation and pressure' }).click()
  await keyPaper(page, T1, first.picture)
  const permit = new RecordFormHand(page)
  await permit.key('Permit', 'PTW-2-0431')
  for (const [label, day, clock] of [
    ['Valid from', '05-21', '07:00'],
    ['Valid to', '05-24', '18:00'],
  ] as const)
    await keyPaperTime(permit, label, day, clock)
  await permit.key('Area authority, by name', 'Shaft 2 control')
  await permit.key('Pressure at start', '0.40')
  await permit.choose('State of the line', 'live')
  await permit.choose('Spark-restricted area', 'yes')
  await page.getByRole('button', { name: 'Save to the record' }).click()
  await expect(page.getByText('Key the day and time on the paper.')).toBeVisible()
  await page.getByLabel('Day on the paper').fill('2026-05-21')
  await page.getByLabel('Time on the paper').fill('07:45')
  await permit.save()
  await expect(page.getByText(`by ${demoPerson(T1).name}; entered`)).toBeVisible()
  await expect(page.getByText(UNCHECKED).first()).toBeVisible()

  await walk.open('02')
  await uploadDemandedPhotos(page)
  await sign(page, L1, 'checked')
  await submit(page)
  await checkPaperAs(page, L1, NUMBER, '02')
  await expect(page.getByText(UNCHECKED)).toHaveCount(0)
  await release(page, L1, 'crew')

  await signInAs(page, QI)
  await page.goto(`/repairs/${NUMBER}/points/16/tally`)
  await expect(page.getByRole('heading', { name: /^Map of the marks/ })).toBeVisible()
  await expect(page.getByRole('img', { name: /^Marks on the unrolled pipe/ })).toBeVisible()
  const second = await addressOnSheet(page)
  walk.at('09:30')
  await page.goto(second.address)
  await page.waitForURL(/\/record\/hardness\?/)
  await keyPaper(page, T1, second.picture)
  const hardness = new RecordFormHand(page)
  await keyPaperTime(hardness, 'Started', '05-21', '08:10')
  await expect(page.getByRole('button', { name: /^Stamp now/ })).toHaveCount(0)
  await hardness.choose('Scale', 'Shore D')
  await hardness.pick('Durometer', 'HD-03')
  const boxes = await page.locator('fieldset[data-marks="readings"] button.cell').count()
  expect(boxes).toBeGreaterThan(0)
  await hardness.marks(
    'Hardness at the marks',
    Array.from({ length: boxes }, (_, at) => String(77 + (at % 4))),
  )
  await hardness.save()
  await expect(page.getByText(UNCHECKED).first()).toBeVisible()
  await checkPaperAs(page, L1, NUMBER, '16')
  await expect(page.getByText(UNCHECKED)).toHaveCount(0)

  await signInAs(page, QI)
  const dossier = await dossierText(page, NUMBER)
  for (const point of ['02', '16'])
    expect(dossier).toContain(`ranscribed from paper, sheet ${NUMBER}/${point}/1/260521-`)
  expect(dossier).toContain('kept by Maren Osterfalk, site file, crew cabin; scan SHA-256')
  expect(dossier).toContain(`checked against the paper by ${demoPerson(L1).name}`)
  expect(dossier).toContain('Scans of paper tallies: 2')
})
