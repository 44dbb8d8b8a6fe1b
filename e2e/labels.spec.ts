import { execFileSync } from 'node:child_process'
import { mkdtempSync, readFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, type Page, test } from '@playwright/test'
import { prepareZXingModule, readBarcodes } from 'zxing-wasm/reader'
import { setClock } from './steps/clock'
import { labelPhoto } from './steps/label-photo'
import { openRepair } from './steps/open-repair'
import { signInAs } from './steps/people'
import { RecordFormHand } from './steps/record-form'
import { QI, S } from './steps/walk'

const NUMBER = process.env.E2E_LABEL_NUMBER ?? 'MD-0143'
const BATCH = `RS-${NUMBER.slice(3)}`
const DAY = '05-18'

/** Every request to another host while the page is used. */
function strangersOf(page: Page): string[] {
  const strangers: string[] = []
  page.on('request', (request) => {
    const { hostname, protocol } = new URL(request.url())
    if (/^https?:$/.test(protocol) && hostname !== 'localhost') strangers.push(request.url())
  })
  return strangers
}

test('a mix counts down at its temperature, through a reload and a locked screen, shakes near the end and says when it is over', async ({
  page,
}) => {
  await page.addInitScript(() => {
    const shakes: unknown[] = []
    Object.assign(window, { shakes })
    navigator.vibrate = (pattern) => shakes.push(pattern) > 0
  })
  const shakes = () => page.evaluate(() => (window as unknown as { shakes: unknown[] }).shakes.length)
  const timer = page.getByRole('timer', { name: 'Working time left' })
  setClock(DAY, '12:00')
  await signInAs(page, QI)
  await openRepair(page, NUMBER)
  await page.goto(`/repairs/${NUMBER}/points/14/record/resin-mix?attempt=1`)
  const form = new RecordFormHand(page)
  await form.key('Mix', 'M1')
  await expect(page.getByText('The clock starts with the stamp of mixing.')).toBeVisible()
  await form.stamp('Mixing started')
  await expect(page.getByText('No time is computed')).toBeVisible()
  await form.key('Temperature of the mix', '15.8')
  await expect(timer).toContainText('Working time, 31 minutes')
  await expect(timer).toContainText(/3[01]:\d\d/)

  setClock(DAY, '12:10')
  await page.reload()
  await expect(timer).toContainText(/2[01]:\d\d/)
  expect(await shakes()).toBe(0)

  setClock(DAY, '12:29:30')
  await page.evaluate(() => document.dispatchEvent(new Event('visibilitychange')))
  await expect(timer).toContainText(/1:[0-3]\d/)
  await expect.poll(shakes).toBe(1)
  await page.getByRole('button', { name: 'Show large' }).click()
  const large = page.getByRole('dialog', { name: /^Working time/ })
  const figures = large.locator('.countdown')
  const box = await figures.boundingBox()
  expect(box?.height ?? 0).toBeGreaterThan(110)
  expect((box?.x ?? -1) >= 0 && (box?.x ?? 0) + (box?.width ?? 999) <= 390).toBe(true)
  setClock(DAY, '12:33')
  await page.evaluate(() => document.dispatchEvent(new Event('visibilitychange')))
  await expect(figures).toHaveText(/^−2:0\d$/)
  await expect(large).toContainText('The working time is over.')
  await expect.poll(shakes).toBe(2)
  await large.getByRole('button', { name: 'Back to the form' }).click()
  await expect(large).toBeHidden()
})

test('a batch is received from a picture of its label, completed by hand and marked so; a scan then says which one it is', async ({
  page,
}) => {
  const strangers = strangersOf(page)
  setClock(DAY, '13:00')
  await signInAs(page, S)
  await page.goto('/batches')
  await page.getByText('Receive a batch', { exact: true }).click()
  await page.getByRole('button', { name: 'Scan', exact: true }).click()
  const dialog = page.getByRole('dialog', { name: 'Scan the label of the batch' })
  await dialog.getByLabel('Or key what the label says').fill('(01)09521234000014(10)X')
  await dialog.getByRole('button', { name: 'Take it' }).click()
  await expect(
    page.getByText('reads 09521234000014. Its last digit, 4, does not fit the others: they ask for 3.'),
  ).toBeVisible()
  await page.getByRole('button', { name: 'Scan', exact: true }).click()
  const file = dialog.getByLabel('From a picture file')
  await file.setInputFiles({ name: 'wall.png', mimeType: 'image/png', buffer: Buffer.from('no picture') })
  await expect(dialog.getByText('This file is no picture')).toBeVisible()
  const photo = await labelPhoto(`[01]09521234000013[10]${BATCH}`)
  await file.setInputFiles({ name: 'label.jpg', mimeType: 'image/jpeg', buffer: photo })
  await expect(page.getByText(`batch ${BATCH} · article 09521234000013`)).toBeVisible()
  await expect(page.getByText('The label lacks the use-by day: complete by hand.')).toBeVisible()
  await expect(page.getByRole('textbox', { name: 'Batch number' })).toHaveValue(BATCH)
  await page.getByRole('group', { name: 'What it is' }).getByText('resin', { exact: true }).click()
  await page.getByLabel('Product name').fill('laminating resin A')
  await page.getByLabel(/^Use by( \(may stay empty\))?$/).fill('2026-12-31')
  await page.getByRole('button', { name: 'Receive the batch' }).click()
  await page.waitForURL(`**/batches/${BATCH}`)
  await expect(page.getByText('read from a picture, completed by hand')).toBeVisible()
  await expect(page.getByText(`(01)09521234000013(10)${BATCH}`)).toBeVisible()

  await page.goto('/scan')
  await page
    .getByLabel('From a picture file')
    .setInputFiles({ name: 'label.jpg', mimeType: 'image/jpeg', buffer: photo })
  await expect(page.getByRole('heading', { name: `Batch ${BATCH}` })).toBeVisible()
  await expect(page.getByText('Known by its batch number.')).toBeVisible()
  await page.getByRole('link', { name: `Open batch ${BATCH}` }).click()
  await page.waitForURL(`**/batches/${BATCH}`)
  await page.goto('/scan')
  const other = await labelPhoto('[01]09521234000013[10]NEVER-SEEN')
  await page
    .getByLabel('From a picture file')
    .setInputFiles({ name: 'other.jpg', mimeType: 'image/jpeg', buffer: other })
  await expect(page.getByText('This label is not known here.')).toBeVisible()
  await page.getByLabel('Or key what the label says').fill('HD-03')
  await page.getByRole('button', { name: 'Take it' }).click()
  await expect(page.getByRole('heading', { name: 'Instrument HD-03' })).toBeVisible()
  expect(strangers).toEqual([])
})

test('a label is printed at the size that was asked for, and what is printed reads back', async ({ page }) => {
  const strangers = strangersOf(page)
  setClock(DAY, '13:30')
  await signInAs(page, QI)
  await page.goto('/batches/FP-121/label')
  await expect(page.getByRole('button', { name: 'Print' })).toHaveCount(0)
  await page.getByLabel('Width, mm').fill('70')
  await page.getByLabel('Height, mm').fill('37')
  await expect(page.getByRole('img', { name: /Code of Batch FP-121/ })).toBeVisible()
  const folder = mkdtempSync(join(tmpdir(), 'underwrap-label-'))
  await page.pdf({ path: join(folder, 'label.pdf'), preferCSSPageSize: true, printBackground: true })
  const about = execFileSync('pdfinfo', [join(folder, 'label.pdf')], { encoding: 'utf8' })
  expect(about).toMatch(/Pages:\s+1\n/)
  const [, width = '', height = ''] = /Page size:\s+([\d.]+) x ([\d.]+) pts/.exec(about) ?? []
  expect(Math.abs((Number(width) * 25.4) / 72 - 70)).toBeLessThan(0.6)
  expect(Math.abs((Number(height) * 25.4) / 72 - 37)).toBeLessThan(0.6)
  const text = execFileSync('pdftotext', ['-layout', join(folder, 'label.pdf'), '-'], { encoding: 'utf8' })
  expect(text).toContain('Batch FP-121')
  expect(text).not.toMatch(/safe|Underwrap/i)
  execFileSync('pdftoppm', ['-r', '300', '-png', '-singlefile', join(folder, 'label.pdf'), join(folder, 'label')])
  prepareZXingModule({
    overrides: {
      wasmBinary: new Uint8Array(readFileSync('node_modules/zxing-wasm/dist/reader/zxing_reader.wasm')).buffer,
    },
  })
  const found = await readBarcodes(new Uint8Array(readFileSync(join(folder, 'label.png'))), { textMode: 'Plain' })
  expect(found.map((one) => one.text)).toEqual(['01095212340000371726103110FP-121'])
  expect(strangers).toEqual([])
})
