import { expect, test } from '@playwright/test'
import { ADMIN } from '@/lib/server/demo/demo-people'
import { E2E_PORT } from './places'
import { openDevice } from './steps/begun-device'
import { history, makeKey, NUMBER, POINT, panel, recordCleanliness, signHere, trySigning } from './steps/begun-point'
import { deviceOptions } from './steps/device-options'
import { expectUsable } from './steps/expect-usable'
import { KeptServer } from './steps/kept-server'
import { sign, signInAs } from './steps/people'
import { L1, QI } from './steps/walk'

const server = new KeptServer(E2E_PORT + 16, ['e2e/serve-kept.ts', 'begun'])
const PIN = '271828'

test.afterAll(() => server.remove())

test('five wrong PINs destroy the only key of a device with no network: the screen counts them down and says what to do', async ({
  browser,
}) => {
  server.setClock('09:10', '05-27')
  await server.start()
  const { context, page } = await openDevice(browser, server, QI)
  await makeKey(page, L1, PIN)
  await context.setOffline(true)
  await server.stop()
  await recordCleanliness(page, '2')
  const refusal = panel(page, /^Sign$/).getByRole('alert')
  for (const left of ['4 tries are left', '3 tries are left', '2 tries are left', '1 try is left']) {
    await trySigning(page, L1, 'checked', '999998')
    await expect(refusal).toContainText('The PIN is not right.')
    await expect(refusal).toContainText(`Nothing was signed. ${left}; the last wrong one destroys`)
  }
  await page.goto('/site#show=signing')
  const mine = panel(page, 'Keys on this device').getByRole('listitem').filter({ hasText: 'Maren Osterfalk' })
  await expect(mine).toContainText('1 try left')

  await page.goto(POINT)
  await trySigning(page, L1, 'checked', '999998')
  await expect(refusal).toContainText('The key was destroyed.')
  await expect(refusal).toContainText('Set up a new key with a network, and end the old one')
  await expect(page.getByRole('button', { name: /^Sign: / })).toBeDisabled()
  await expectUsable(page)
  await expect(history(page)).toHaveCount(0)
  await expect(page.locator('article.group')).toHaveCount(1)
  await page.goto('/site#show=signing')
  await expect(mine).toHaveCount(0)

  await server.start()
  await context.setOffline(false)
  await expect(page.locator('.outbox-line')).toHaveCount(0, { timeout: 60_000 })
  await makeKey(page, L1, PIN)
  await page.goto(POINT)
  await signHere(page, L1, 'checked', PIN)
  await context.close()
})

test('a key is ended on the page of its person while the device is out of reach: what it signs afterwards is refused in words and stays on the device', async ({
  browser,
}) => {
  server.setClock('09:10', '05-27')
  await server.start()
  const { context, page } = await openDevice(browser, server, QI)
  await makeKey(page, QI, PIN)
  await context.setOffline(true)

  const office = await browser.newContext(deviceOptions(server.url))
  const desk = await office.newPage()
  await signInAs(desk, ADMIN)
  await desk.goto(`/people/${QI}`)
  const ends = desk.locator('#keys details.act').filter({ hasText: 'End this key' })
  await expect(ends).toHaveCount(1)
  await ends.locator('summary').click()
  await ends.getByLabel('Why it is ended').fill('tablet left in the cage')
  await ends.getByRole('button', { name: 'End the key' }).click()
  await expect(desk.locator('#keys').getByText(/^Ended .*: tablet left in the cage/)).toBeVisible()
  await office.close()

  await recordCleanliness(page, '3')
  await signHere(page, QI, 'measured', PIN)
  await context.setOffline(false)
  await expect(page.locator('.outbox-line')).toContainText('1 entry is not yet sent', { timeout: 60_000 })
  await expect(page.locator('.outbox-line')).toContainText('1 refused')
  await page.locator('.outbox-line a').click()
  const row = panel(page, /^Refused/).getByRole('listitem')
  await expect(row).toHaveCount(1)
  await expect(row).toContainText('Signature: measured by Tobias Wrenfield')
  await expect(row).toContainText('The key of this device was ended.')
  await expect(row).toContainText(/Since 2026-05-27 09:1\d \+01:00 it signs nothing\. Sign again before the server/)
  await expectUsable(page)
  await page.reload()
  await expect(row).toContainText('The key of this device was ended.')
  await page.goto(POINT)
  await expect(page.getByText('The key of Tobias Wrenfield was ended in the record.')).toBeVisible()
  await expect(page.getByRole('button', { name: /^Sign: / })).toHaveCount(0)

  await page.goto(`/repairs/${NUMBER}/points/05`)
  await expect(page.locator('article.group').filter({ hasText: '3 ' }).first()).toBeVisible()
  await expect(history(page).filter({ hasText: 'measured' })).toHaveCount(0)
  await sign(page, QI, 'measured')
  await page.goto('/site#show=outbox')
  await row.getByRole('button', { name: 'Set aside' }).click()
  await row.getByLabel('Why it is set aside').fill('signed again before the server')
  await row.getByRole('button', { name: /^Set it aside/ }).click()
  await expect(row).toHaveCount(0)
  await expect(page.locator('.outbox-line')).toHaveCount(0)
  await page.goto('/site#show=signing')
  const mine = panel(page, 'Keys on this device').getByRole('listitem').filter({ hasText: 'Tobias Wrenfield' })
  await expect(mine).toContainText('ended in the record')
  await mine.getByRole('button', { name: 'Take it off this device' }).click()
  await expect(mine).toHaveCount(0)
  await context.close()
})
