import { expect, test } from '@playwright/test'
import { E2E_PORT } from './places'
import { expectUsable } from './steps/expect-usable'
import { fillRepair } from './steps/fill-repair'
import { KeptServer } from './steps/kept-server'
import { keyRepair, openRepair } from './steps/open-repair'
import { signInAs } from './steps/people'
import { RecordFormHand } from './steps/record-form'
import { waitForShell } from './steps/wait-for-shell'
import { QI } from './steps/walk'

const server = new KeptServer(E2E_PORT + 9)
test.use({ baseURL: server.url })

test.afterAll(() => server.remove())

test('a repair is opened without a network under a number of the device, worked on at once, and received once; on another device the number is refused', async ({
  page,
  context,
  browser,
}) => {
  server.setClock('07:30')
  await server.start()
  await signInAs(page, QI)
  await openRepair(page, 'MD-0400')
  await page.goto('/site')
  await page.getByRole('button', { name: 'Take numbers along' }).click()
  await page.getByRole('combobox', { name: 'Project' }).selectOption({ value: 'project:QDM-SHAFT-2' })
  await page.getByRole('button', { name: 'MD-', exact: true }).click()
  await page.getByRole('combobox', { name: 'How many' }).selectOption('5')
  await page.getByRole('button', { name: 'Take 5 numbers along' }).click()
  await expect(page.getByText('5 numbers left on this device')).toBeVisible({ timeout: 60_000 })
  await expectUsable(page)
  await waitForShell(page)

  await server.stop()
  await context.setOffline(true)
  await page.goto('/site')
  await page.getByRole('link', { name: 'Open repair MD-0401' }).click()
  await expect(page.locator('.chalked')).toHaveText('MD-0401')
  await fillRepair(page)
  await expectUsable(page)
  await page.getByRole('button', { name: 'Open repair MD-0401 on this device' }).click()
  await page.waitForURL('**/site#repair=MD-0401')
  await expect(page.getByRole('heading', { name: 'Repair MD-0401' })).toBeVisible()
  await expect(page.getByText('Opened on this device')).toBeVisible()
  await page.goto('/site#repair=MD-0401&point=05&attempt=1&form=remark')
  await new RecordFormHand(page).key('Remark', 'band wiped, leak weeps')
  await page.getByRole('button', { name: 'Save to the record' }).click()
  await page.waitForURL(/\/site#repair=MD-0401&point=05&attempt=1$/)
  await expect(page.locator('article.group').filter({ hasText: 'band wiped, leak weeps' })).toContainText(
    'Not yet sent',
  )
  await page.goto('/site')
  await expect(page.getByText('4 numbers left on this device')).toBeVisible()
  await expect(page.getByRole('link', { name: 'Open repair MD-0402' })).toBeVisible()

  server.setClock('08:00')
  await server.start()
  await context.setOffline(false)
  await page.goto('/site')
  await expect(page.locator('.outbox-line')).toHaveCount(0, { timeout: 60_000 })
  await expect(page.getByText('As the server knew it').first()).toBeVisible({ timeout: 60_000 })
  await page.goto('/repairs/MD-0401/points/05')
  await expect(page.locator('article.group').filter({ hasText: 'band wiped, leak weeps' })).toHaveCount(1)

  const device = await browser.newContext({ baseURL: server.url })
  const other = await device.newPage()
  await signInAs(other, QI)
  await keyRepair(other, 'MD-0403')
  await other.getByRole('button', { name: 'Open the repair' }).click()
  await expect(other.getByText('MD-0403 belongs to another device.')).toBeVisible()
  await device.close()
})
