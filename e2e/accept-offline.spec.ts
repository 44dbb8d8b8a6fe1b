import { expect, type Page, test } from '@playwright/test'
import { E2E_PORT } from './places'
import { IN_PERSON } from './prepare-begun-repair'
import { comeBack, openDevice } from './steps/begun-device'
import { makeKey, panel } from './steps/begun-point'
import { drawSignature } from './steps/draw-signature'
import { expectUsable } from './steps/expect-usable'
import { KeptServer } from './steps/kept-server'
import { QI } from './steps/walk'

const server = new KeptServer(E2E_PORT + 18, ['e2e/serve-kept.ts', 'begun', 'accepted'])
const closing = new KeptServer(E2E_PORT + 19, ['e2e/serve-kept.ts', 'closing'])
const ACCEPTED = 'MD-0044'
const PIN = '271828'

test.afterAll(async () => {
  await server.remove()
  await closing.remove()
})

/** The client's representative signs the acceptance in person, before the inspector's key. */
async function signInPerson(page: Page): Promise<void> {
  const sheet = panel(page, 'Acceptance')
  await sheet.getByText('Sign this acceptance').click()
  await sheet.getByLabel('Who signs').selectOption(IN_PERSON.id)
  await sheet.getByLabel('PIN of Tobias Wrenfield').fill(PIN)
  await expect(sheet.getByRole('button', { name: 'Sign: accepted' })).toBeDisabled()
  await drawSignature(page, IN_PERSON.name)
  await expectUsable(page)
  await sheet.getByRole('button', { name: 'Sign: accepted' }).click()
  await expect(sheet.getByText(`accepted: ${IN_PERSON.name}, client`)).toContainText('Not yet sent')
}

test('a client without an account signs the acceptance in person, with no network, over the acceptance as it was shown', async ({
  browser,
}) => {
  server.setClock('09:10', '05-27')
  await server.start()
  const { context, page } = await openDevice(browser, server, QI, ACCEPTED)
  await makeKey(page, QI, PIN)
  await context.setOffline(true)
  await page.goto(`/site#repair=${ACCEPTED}`)
  const sheet = panel(page, 'Acceptance')
  await expect(sheet).toContainText('next inspection 2027-05-14')
  const before = await sheet.getByText(/^accepted: /).count()
  await signInPerson(page)
  await expect(sheet.getByText(/^accepted: /)).toHaveCount(before + 1)

  server.setClock('09:40', '05-27')
  await comeBack({ context, page })
  await page.goto(`/repairs/${ACCEPTED}/accept`)
  await expect(page.getByText(`accepted: ${IN_PERSON.name}, client`)).toBeVisible()
  await page.goto(`/repairs/${ACCEPTED}`)
  await expect(page.getByText('A decision made without a network')).toHaveCount(0)
  await context.close()
})

test('an inspector accepts with no network and the client signs it there in person: it arrives once, without a conflict', async ({
  browser,
}) => {
  closing.setClock('16:40', '05-14')
  await closing.start()
  const { context, page } = await openDevice(browser, closing, QI, ACCEPTED)
  await makeKey(page, QI, PIN)
  await context.setOffline(true)
  await page.goto(`/site#repair=${ACCEPTED}`)
  const sheet = panel(page, /^Accept$/)
  const accept = sheet.getByRole('button', { name: 'Accept and sign' })
  await expect(accept).toBeDisabled()
  await sheet.getByLabel('accepted', { exact: true }).check()
  await sheet.getByLabel('Who signs').selectOption(QI)
  await sheet.getByLabel('PIN of Tobias Wrenfield').fill(PIN)
  await accept.click()
  await expect(sheet.getByRole('alert')).toContainText('Life counts from: a day')
  await expectUsable(page)
  await sheet.getByLabel('Life, years').fill('5')
  await sheet.getByLabel(/^Life counts from/).fill('2026-05-14')
  await sheet.getByLabel('Next inspection').fill('2027-05-14')
  await sheet.getByLabel('Restrictions, one line each').fill('no welding on the wrap')
  await sheet.getByLabel('accepted under concession').check()
  await expect(sheet.getByText('It may not be accepted now.')).toBeVisible()
  await expect(accept).toBeDisabled()
  await sheet.getByLabel('accepted', { exact: true }).check()
  await accept.click()
  const stands = panel(page, 'Acceptance')
  await expect(stands).toContainText('next inspection 2027-05-14')
  await expect(stands).toContainText('no welding on the wrap')
  await signInPerson(page)
  await page.reload()
  await expect(stands.getByText(`accepted: ${IN_PERSON.name}, client`)).toContainText('Not yet sent')

  closing.setClock('17:10', '05-14')
  await comeBack({ context, page })
  await page.goto(`/repairs/${ACCEPTED}/accept`)
  await expect(page.getByText(`accepted: ${IN_PERSON.name}, client`)).toHaveCount(1)
  await expect(page.getByText('next inspection 2027-05-14')).toBeVisible()
  await page.goto(`/repairs/${ACCEPTED}`)
  await expect(page.getByText('A decision made without a network')).toHaveCount(0)
  await context.close()
})
