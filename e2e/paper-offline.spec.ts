import { expect, test } from '@playwright/test'
import { DEMO_PASSWORD, demoPerson } from '@/lib/server/demo/demo-people'
import { E2E_PORT } from './places'
import { IN_PERSON } from './prepare-begun-repair'
import { comeBack, openDevice } from './steps/begun-device'
import { history, NUMBER, POINT } from './steps/begun-point'
import { deviceOptions } from './steps/device-options'
import { dossierText } from './steps/dossier-text'
import { drawSignature } from './steps/draw-signature'
import { expectUsable } from './steps/expect-usable'
import { fillCleanliness } from './steps/fill-cleanliness'
import { KeptServer } from './steps/kept-server'
import { checkPaperAs, keyPaper, keyPaperTime, UNCHECKED } from './steps/paper'
import { signInAs, signSheet } from './steps/people'
import { drawPhoto } from './steps/photos'
import { RecordFormHand } from './steps/record-form'
import { L1, QI, T1 } from './steps/walk'

const server = new KeptServer(E2E_PORT + 17, ['e2e/serve-kept.ts', 'begun'])
const SHEET = `${NUMBER}/05/1/260527-073000`

test.afterAll(() => server.remove())

test('a paper tally is copied with its scan and no network, arrives once, and a second person checks it at the desk', async ({
  browser,
}) => {
  server.setClock('09:10', '05-27')
  await server.start()
  const device = await openDevice(browser, server, QI)
  const { context, page } = device
  await context.setOffline(true)
  await server.stop()

  await page.goto(`${POINT}&form=cleanliness&attempt=1`)
  await page.getByRole('link', { name: 'From a paper tally' }).click()
  await expect(page.getByRole('heading', { level: 1 })).toContainText('from paper')
  const save = page.getByRole('button', { name: 'Save to the record' })
  const form = new RecordFormHand(page)
  await keyPaperTime(form, 'Preparation finished', '05-27', '08:40')
  await keyPaperTime(form, 'Checked', '05-27', '09:05')
  await fillCleanliness(form, { dust: '2' })
  await save.click()
  await expect(page.getByText('Not saved yet.').first()).toBeVisible()
  await page.getByLabel('Number of the sheet').fill(SHEET)
  await keyPaper(page, T1, await drawPhoto(`Tally sheet ${SHEET}`))
  await expect(page.getByText('It is on this device and is sent before the copy.')).toBeVisible()
  await expectUsable(page)
  await save.click()
  await page.waitForURL(/\/site#repair=MD-0043&point=05&attempt=1$/)
  const copy = page.locator('article.group')
  await expect(copy).toHaveCount(1)
  await expect(copy).toContainText('Not yet sent')
  await expect(copy).toContainText(`From paper, sheet ${SHEET}`)
  await expect(page.locator('.outbox-line')).toContainText('2 entries are not yet sent')

  server.setClock('11:30', '05-27')
  await server.start()
  await comeBack(device)
  await page.goto(`/repairs/${NUMBER}/points/05`)
  await expect(copy).toHaveCount(1)
  await expect(page.getByText(`by ${demoPerson(T1).name}; entered`)).toBeVisible()
  await expect(page.getByText(UNCHECKED).first()).toBeVisible()
  await checkPaperAs(page, L1, NUMBER, '05')
  await expect(page.getByText(UNCHECKED)).toHaveCount(0)
  await context.close()
})

test('a client without an account signs at the desk by drawing: undone, cleared, drawn again, and the dossier shows it', async ({
  browser,
}) => {
  await server.start()
  const context = await browser.newContext(deviceOptions(server.url))
  const page = await context.newPage()
  await signInAs(page, QI)
  await page.goto(`/repairs/${NUMBER}/points/01`)
  const sheet = signSheet(page)
  if ((await sheet.getAttribute('open')) === null) await sheet.locator('summary').click()
  const button = sheet.getByRole('button', { name: /^Sign: / })
  await sheet.getByRole('group', { name: 'Meaning' }).getByText('reviewed', { exact: true }).click()
  await sheet.getByLabel('Who signs').selectOption(IN_PERSON.id)
  await sheet.getByLabel(`Your own password, as witness that ${IN_PERSON.name} signs in person`).fill(DEMO_PASSWORD)
  await expect(button).toBeDisabled()
  const pad = sheet.getByRole('group', { name: `Signature of ${IN_PERSON.name}, drawn` })
  for (const away of ['Undo the last stroke', 'Clear']) {
    await drawSignature(page, IN_PERSON.name)
    await expect(button).toBeEnabled()
    await pad.getByRole('button', { name: away }).click()
    await expect(pad.getByRole('img')).toHaveAttribute('aria-label', 'Field to draw in, 0 strokes')
    await expect(button).toBeDisabled()
  }
  await drawSignature(page, IN_PERSON.name)
  await expectUsable(page)
  await button.click()
  const line = history(page).filter({ hasText: `reviewed: ${IN_PERSON.name}` })
  await expect(line).toHaveCount(1)
  await expect(line).toContainText(/in person, seen by Tobias Wrenfield; by password; drawn, digest [0-9a-f]{8}…/)
  await expect(pad).toHaveCount(0)

  const text = await dossierText(page, NUMBER)
  expect(text).toMatch(new RegExp(`Drawn by ${IN_PERSON.name}, reviewed, 2026-05-27`))
  expect(text).not.toContain('is not kept any more')
  await context.close()
})
