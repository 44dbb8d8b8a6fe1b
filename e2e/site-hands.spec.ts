import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { type BrowserContext, expect, type Page, test } from '@playwright/test'
import { E2E_PORT } from './places'
import { cameraArguments, type Scene, showCamera } from './steps/fake-camera'
import { openKeptBrowser } from './steps/kept-browser'
import { KeptServer } from './steps/kept-server'
import { openRepair } from './steps/open-repair'
import { signInAs } from './steps/people'
import { demandedPhotos } from './steps/photos'
import { RecordFormHand } from './steps/record-form'
import { takeToSite } from './steps/take-to-site'
import { waitForShell } from './steps/wait-for-shell'
import { QI } from './steps/walk'

const NUMBER = 'MD-0211'
/** A camera is there, and nobody answers the browser's question: it counts as refused. */
const CAMERA_UNASKED = '--use-fake-device-for-media-stream'
const PASSPHRASE = 'seven wet gloves in shaft two'
const server = new KeptServer(E2E_PORT + 9)
const folder = mkdtempSync(join(tmpdir(), 'underwrap-e2e-hands-'))
const film = join(folder, 'camera.y4m')
const opened: BrowserContext[] = []

test.beforeAll(async () => {
  await showCamera(film, 'dark')
  server.setClock('07:30')
  await server.start()
})

test.afterAll(async () => {
  for (const context of opened) await context.close()
  await server.remove()
  rmSync(folder, { recursive: true, force: true })
})

/** A device of its own, by its name; with the drawn camera or with one that nobody allowed. */
async function openDevice(name: string, camera: 'drawn' | 'not allowed'): Promise<Page> {
  const args = camera === 'drawn' ? cameraArguments(film) : [CAMERA_UNASKED]
  const { context, page } = await openKeptBrowser(join(folder, name), server.url, { acceptDownloads: true }, args)
  opened.push(context)
  return page
}

/** Take one photo with what stands before the lens; the words that the device has for it. */
async function shoot(page: Page, demand: string, scene: Scene, words: RegExp): Promise<void> {
  await showCamera(film, scene)
  const row = page.locator('.photo-demand').filter({ hasText: demand })
  const camera = row.getByRole('button', { name: 'Camera', exact: true })
  // after "Take it again" the camera is open already, on the scene of before: close it, so that it looks anew
  if (!(await camera.isVisible())) await row.getByRole('button', { name: 'Close the camera' }).click()
  await camera.click()
  await expect(row.getByText('Board and scale in view?')).toBeVisible()
  await expect(row.getByRole('button', { name: 'Take the photo' })).toBeEnabled()
  await row.getByRole('button', { name: 'Take the photo' }).click()
  await expect(row.getByRole('status')).toContainText(words)
}

async function carryIn(desk: Page, file: string, passphrase = PASSPHRASE): Promise<void> {
  await desk.goto('/site#show=outbox')
  // where the screen stands already, it stays as it was
  const field = desk.getByLabel(/^Passphrase/)
  const fold = desk.getByText('Carry it by hand, in an encrypted file')
  await fold.waitFor()
  if (!(await field.isVisible())) await fold.click()
  await field.fill(passphrase)
  await desk.getByLabel('Carry a file in').setInputFiles(file)
}

/** The remark and the photo of the point stand in the record, once. */
async function expectOnce(desk: Page): Promise<void> {
  await desk.goto(`/repairs/${NUMBER}/points/05`)
  await expect(desk.locator('article.group').filter({ hasText: 'band wiped twice, seen by lamp' })).toHaveCount(1)
  await expect(desk.locator('.thumbs figure')).toHaveCount(1)
}

test('with the server gone: demanded photos by the camera in the form, then written into an encrypted file that opens with its passphrase alone and, carried in twice, arrives once', async () => {
  const device = await openDevice('phone', 'drawn')
  await signInAs(device, QI)
  await openRepair(device, NUMBER)
  await takeToSite(device, NUMBER)
  await waitForShell(device)
  await device.context().setOffline(true)
  await server.stop()
  await device.goto(`/site#repair=${NUMBER}&point=05&form=remark`)
  await new RecordFormHand(device).key('Remark', 'band wiped twice, seen by lamp')
  await device.getByRole('button', { name: 'Save to the record' }).dblclick()
  await expect(device.locator('article.group')).toHaveCount(1)

  const demands = await demandedPhotos(device)
  expect(demands.length).toBe(2)
  const [first = '', second = ''] = demands
  await shoot(device, first, 'dark', /It is dark\. Give light, and take it again/)
  await device.getByRole('button', { name: 'Take it again' }).click()
  await shoot(device, first, 'blurred', /It looks blurred\. Hold still/)
  await device.getByRole('button', { name: 'Take it again' }).click()
  await shoot(device, first, 'well lit', /Board and scale readable\? Then keep it\./)
  const taken = device.getByRole('img', { name: `As taken: ${first}` })
  expect(await taken.evaluate((node) => (node as HTMLImageElement).naturalWidth)).toBe(640)
  await device.getByRole('button', { name: 'Keep it' }).click()
  await expect(device.locator('.photo-demand').filter({ hasText: first }).getByText('1 of 1')).toBeVisible()
  await expect(device.locator('.photo-demand').filter({ hasText: second }).getByText('0 of 1')).toBeVisible()
  await expect(device.getByRole('link', { name: /^2 entries are not yet sent/ })).toBeVisible()

  await device.goto('/site#show=outbox')
  await device.getByText('Carry it by hand, in an encrypted file').click()
  await device.getByLabel(/^Passphrase/).fill('too short')
  await device.getByRole('button', { name: 'Write what waits into a file' }).click()
  await expect(device.getByText('The passphrase is too short.')).toBeVisible()
  await device.getByLabel(/^Passphrase/).fill(PASSPHRASE)
  const downloading = device.waitForEvent('download')
  await device.getByRole('button', { name: 'Write what waits into a file' }).click()
  const file = join(folder, (await downloading).suggestedFilename())
  await (await downloading).saveAs(file)
  expect(file).toMatch(/\.uwoutbox$/)
  await expect(device.getByText('Nothing was taken off this device.')).toBeVisible()

  server.setClock('09:00')
  await server.start()
  const desk = await openDevice('desk', 'not allowed')
  await signInAs(desk, QI)
  // the device takes down who works at it once the first page has come to life
  await waitForShell(desk)
  await carryIn(desk, file, 'seven dry gloves in shaft two')
  await expect(desk.getByText('The passphrase is not the one it was written with')).toBeVisible()
  for (const _ of ['at first', 'once more']) {
    await carryIn(desk, file)
    await expect(desk.getByText('2 received, 0 refused, 0 not sent.')).toBeVisible()
    await expectOnce(desk)
  }
  await device.context().setOffline(false)
  await device.goto('/site#show=outbox')
  // the remark, the photo, and that this device is one of ours
  await expect(device.getByText('Sent in the last week: 3.')).toBeVisible({ timeout: 60_000 })
  await expectOnce(desk)
})

test('a camera that is not allowed says so, and the photo comes from a file', async () => {
  const page = await openDevice('tablet', 'not allowed')
  await signInAs(page, QI)
  await openRepair(page, 'MD-0212')
  await page.goto('/repairs/MD-0212/points/05?attempt=1')
  await page.getByRole('button', { name: 'Camera', exact: true }).first().click()
  await expect(page.getByText('Allow it for this site in the browser, or choose a picture file.')).toBeVisible()
  await expect(page.getByRole('button', { name: 'Take the photo' })).toBeDisabled()
  await page.getByRole('button', { name: 'Close the camera' }).click()
  await expect(page.getByText('Choose a file').first()).toBeVisible()
})
