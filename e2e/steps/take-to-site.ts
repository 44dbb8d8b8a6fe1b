import { expect, type Page } from '@playwright/test'

/** Take a repair along on this device, as who is signed in. */
export async function takeToSite(page: Page, number: string): Promise<void> {
  await page.goto(`/repairs/${number}`)
  await page.getByRole('button', { name: 'Take to site' }).click()
  await expect(page.getByRole('link', { name: /^On this device/ })).toBeVisible({ timeout: 60_000 })
}
