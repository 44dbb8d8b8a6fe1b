import { expect, type Locator, type Page } from '@playwright/test'
import { DEMO_PASSWORD, demoPerson } from '@/lib/server/demo/demo-people'

/** Who signs what, and who releases for which party, in order. */
export type Signs = readonly (readonly [id: string, meaning: string])[]
export type Releases = readonly (readonly [id: string, party: string])[]

/** Sign in as a person of the store; whoever was signed in before is signed out. */
export async function signInAs(page: Page, id: string): Promise<void> {
  await page.context().clearCookies()
  await page.goto('/sign-in')
  await page.getByLabel(/e-?mail/i).fill(demoPerson(id).email)
  await page.getByLabel(/password/i).fill(DEMO_PASSWORD)
  await page.getByRole('button', { name: /sign in/i }).click()
  await page.waitForURL('**/waiting')
}

/** Where a point page signs. */
export function signSheet(page: Page): Locator {
  return page.locator('details.sheet').filter({ has: page.getByRole('heading', { name: 'Sign', exact: true }) })
}

/** Where a point page releases. */
export function releaseSheet(page: Page): Locator {
  return page.locator('section.sheet').filter({ has: page.getByRole('heading', { name: /^Hold for/ }) })
}

/** Sign what is recorded at the open point page. */
export async function sign(page: Page, id: string, meaning: string): Promise<void> {
  const sheet = signSheet(page)
  if ((await sheet.getAttribute('open')) === null) await sheet.locator('summary').click()
  await sheet.getByRole('group', { name: 'Meaning' }).getByText(meaning, { exact: true }).click()
  await chooseSigner(sheet, id)
  const signed = page.getByRole('listitem').filter({ hasText: `${meaning}: ${demoPerson(id).name}` })
  const before = await signed.count()
  await sheet.getByRole('button', { name: `Sign: ${meaning}` }).click()
  await expect(signed).toHaveCount(before + 1)
}

/** Submit the point, then release it whole for a party. */
export async function submitAndRelease(page: Page, releases: Releases): Promise<void> {
  await submit(page)
  for (const [id, party] of releases) await release(page, id, party)
}

export async function submit(page: Page): Promise<void> {
  const button = page.getByRole('button', { name: 'Submit for release' })
  await button.click()
  await expect(button).toHaveCount(0)
  await expect(page.getByRole('listitem').filter({ hasText: /^Submitted/ })).toBeVisible()
}

export async function release(page: Page, id: string, party: string): Promise<void> {
  const sheet = releaseSheet(page)
  await expect(sheet.getByRole('group', { name: 'Scope' })).toBeVisible()
  const parties = sheet.getByRole('radiogroup', { name: 'Release for' })
  if (await parties.isVisible()) await parties.getByText(party, { exact: true }).click()
  await chooseSigner(sheet, id)
  const released = page.getByRole('listitem').filter({ hasText: new RegExp(`^Released for ${party}`) })
  const before = await released.count()
  await sheet.getByRole('button', { name: 'Release to the plan' }).click()
  await expect(released).toHaveCount(before + 1)
}

async function chooseSigner(sheet: Locator, id: string): Promise<void> {
  await sheet.getByLabel('Who signs').selectOption(id)
  await sheet.getByLabel(new RegExp(`^Password of ${demoPerson(id).name}`)).fill(DEMO_PASSWORD)
}
