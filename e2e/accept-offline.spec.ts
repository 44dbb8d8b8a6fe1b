import { expect, test } from '@playwright/test'
import { E2E_PORT } from './places'
import { IN_PERSON } from './prepare-begun-repair'
import { comeBack, openDevice } from './steps/begun-device'
import { makeKey, panel } from './steps/begun-point'
import { drawSignature } from './steps/draw-signature'
import { expectUsable } from './steps/expect-usable'
import { KeptServer } from './steps/kept-server'
import { QI } from './steps/walk'

const server = new KeptServer(E2E_PORT + 18, ['e2e/serve-kept.ts', 'begun', 'accepted'])
const ACCEPTED = 'MD-0044'
const PIN = '271828'

test.afterAll(() => server.remove())

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
  await sheet.getByText('Sign this acceptance').click()
  await sheet.getByLabel('Who signs').selectOption(IN_PERSON.id)
  await sheet.getByLabel('PIN of Tobias Wrenfield').fill(PIN)
  await expect(sheet.getByRole('button', { name: 'Sign: accepted' })).toBeDisabled()
  await drawSignature(page, IN_PERSON.name)
  await expectUsable(page)
  await sheet.getByRole('button', { name: 'Sign: accepted' }).click()
  await expect(sheet.getByText(`accepted: ${IN_PERSON.name}, client`)).toContainText('Not yet sent')
  await expect(sheet.getByText(/^accepted: /)).toHaveCount(before + 1)

  server.setClock('09:40', '05-27')
  await comeBack({ context, page })
  await page.goto(`/repairs/${ACCEPTED}/accept`)
  await expect(page.getByText(`accepted: ${IN_PERSON.name}, client`)).toBeVisible()
  await page.goto(`/repairs/${ACCEPTED}`)
  await expect(page.getByText('A decision made without a network')).toHaveCount(0)
  await context.close()
})
