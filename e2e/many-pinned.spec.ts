import { expect, test } from '@playwright/test'
import { DEMO_URL } from './places'
import { signInAs } from './steps/people'
import { takeToSite } from './steps/take-to-site'
import { waitForShell } from './steps/wait-for-shell'
import { QI } from './steps/walk'

const NUMBERS = ['MD-0041', 'MD-0042', 'MD-0044']

test.use({ baseURL: DEMO_URL })

test('a form opens from the pack of its own repair; what else was taken along is there by the way back, without a network', async ({
  page,
  context,
}) => {
  await signInAs(page, QI)
  for (const number of NUMBERS) await takeToSite(page, number)
  await waitForShell(page)
  await context.setOffline(true)

  await page.goto('/site#repair=MD-0042&point=16&attempt=3&form=hardness')
  await expect(page.getByRole('button', { name: 'Save to the record' })).toBeVisible()
  await page.getByRole('link', { name: /^‹ MD-0042/ }).click()
  await expect(page.getByRole('heading', { name: 'Hardness', exact: true })).toBeVisible()
  await page.getByRole('link', { name: /^‹ MD-0042/ }).click()
  await page.getByRole('link', { name: '‹ On this device' }).click()
  for (const number of NUMBERS) await expect(page.getByRole('heading', { name: `Repair ${number}` })).toBeVisible()
  await page.getByRole('link', { name: 'Repair MD-0044' }).click()
  await expect(page.getByRole('heading', { level: 1 })).toContainText('MD-0044')

  await page.goto('about:blank')
  await page.goto('/site#repair=MD-0043')
  await expect(page.getByText('MD-0043 is not on this device.')).toBeVisible()
  for (const number of NUMBERS) await expect(page.getByRole('heading', { name: `Repair ${number}` })).toBeVisible()
})
