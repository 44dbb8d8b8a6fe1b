import type { Page } from '@playwright/test'
import { fillRepair } from './fill-repair'
import { HEADER_REPAIR } from './header-repair'

/** Key the number and project of a new repair of the header line in the test store, and its fields, on the page that opens it. */
export async function keyRepair(page: Page, number: string): Promise<void> {
  await page.goto('/repairs/new')
  await page.getByRole('textbox', { name: 'Repair number', exact: true }).fill(number)
  await page.getByRole('combobox', { name: 'Project', exact: true }).selectOption(`project:${HEADER_REPAIR.project}`)
  await fillRepair(page)
}

/** Open a repair of the header line in the test store, by its page. */
export async function openRepair(page: Page, number: string): Promise<void> {
  await keyRepair(page, number)
  await page.getByRole('button', { name: 'Open the repair' }).click()
  await page.waitForURL(`**/repairs/${number}`)
}
