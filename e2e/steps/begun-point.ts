import { expect, type Page } from '@playwright/test'
import { DEMO_PASSWORD, demoPerson } from '@/lib/server/demo/demo-people'
import { fillCleanliness } from './fill-cleanliness'
import { RecordFormHand } from './record-form'
import { takeToSite } from './take-to-site'
import { waitForShell } from './wait-for-shell'

export const NUMBER = 'MD-0043'
export const POINT = `/site#repair=${NUMBER}&point=05`

/** Take the begun repair along, or another, as who is signed in. */
export async function takeAlong(page: Page, number = NUMBER): Promise<void> {
  await takeToSite(page, number)
  await waitForShell(page)
}

/** Make a person's key on this device. */
export async function makeKey(page: Page, id: string, pin: string): Promise<void> {
  const { name } = demoPerson(id)
  await page.goto('/site#show=signing')
  const sheet = page.locator('section.sheet').filter({ has: page.getByRole('heading', { name: 'Make a key' }) })
  await sheet.getByLabel('Whose key').selectOption(id)
  await sheet.getByLabel(`Password of ${name}`).fill(DEMO_PASSWORD)
  await sheet.getByLabel('New PIN').fill(pin)
  await sheet.getByLabel('The PIN again').fill(pin)
  await sheet.getByRole('button', { name: 'Make the key' }).click()
  await expect(page.getByText(`${name} signs on this device from now on`)).toBeVisible({ timeout: 60_000 })
}

/** Record the cleanliness of point 05 on this device. */
export async function recordCleanliness(page: Page, dust: string): Promise<void> {
  await page.goto(`${POINT}&form=cleanliness&attempt=1`)
  const form = new RecordFormHand(page)
  await form.time('Preparation finished', '05-27', '08:40')
  await form.time('Checked', '05-27', '09:05')
  await fillCleanliness(form, { dust })
  await page.getByRole('button', { name: 'Save to the record' }).click()
  await page.waitForURL(/\/site#repair=MD-0043&point=05&attempt=1$/)
  await expect(
    page
      .locator('article.group')
      .filter({ hasText: `${dust} ` })
      .first(),
  ).toBeVisible()
}

/** The part of the screen that signs, or that releases. */
export function panel(page: Page, heading: string | RegExp) {
  return page.locator('section.sheet').filter({ has: page.getByRole('heading', { name: heading }) })
}

/** What was signed and decided at the open point, one line each. */
export const history = (page: Page) => panel(page, 'Signed, released, refused').getByRole('listitem')

/** Sign at the open point with a person's key. */
export async function signHere(page: Page, id: string, meaning: string, pin: string): Promise<void> {
  await trySigning(page, id, meaning, pin)
  await expect(page.getByText(`${demoPerson(id).name} signed: ${meaning}.`)).toBeVisible()
}

/** The same, whatever comes of it. */
export async function trySigning(page: Page, id: string, meaning: string, pin: string): Promise<void> {
  const { name } = demoPerson(id)
  const sheet = panel(page, /^Sign$/)
  await sheet.getByLabel('Who signs').selectOption(id)
  await sheet.getByRole('group', { name: 'Meaning' }).getByText(meaning, { exact: true }).click()
  await sheet.getByLabel(`PIN of ${name}`).fill(pin)
  await sheet.getByRole('button', { name: `Sign: ${meaning}` }).click()
}

/** Release the open point whole for a party with a person's key. */
export async function releaseHere(page: Page, id: string, party: string | null, pin: string): Promise<void> {
  const sheet = panel(page, /^Hold for/)
  if (party) await sheet.getByRole('group', { name: 'Release for' }).getByText(party, { exact: true }).click()
  await sheet.getByLabel('Who signs').selectOption(id)
  await sheet.getByLabel(`PIN of ${demoPerson(id).name}`).fill(pin)
  const button = sheet.getByRole('button', { name: 'Release to the plan' })
  await expect(button).toBeEnabled()
  await button.click()
  await expect(page.getByRole('listitem').filter({ hasText: `released: ${demoPerson(id).name}` })).toHaveCount(1)
}
