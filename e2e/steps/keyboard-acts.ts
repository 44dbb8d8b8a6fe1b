import { expect, type Page } from '@playwright/test'
import { DEMO_PASSWORD, demoPerson } from '@/lib/server/demo/demo-people'
import { HEADER_REPAIR } from './header-repair'
import { Keyboard } from './keyboard'
import { type Releases, releaseSheet, type Signs, signSheet } from './people'

/** Sign in without a pointer. */
export async function signInByKeyboard(page: Page, id: string): Promise<void> {
  const keys = new Keyboard(page)
  await page.context().clearCookies()
  await page.goto('/sign-in')
  await keys.type(page.getByLabel(/e-?mail/i), demoPerson(id).email)
  await keys.type(page.getByLabel(/password/i), DEMO_PASSWORD)
  await page.keyboard.press('Enter')
  await page.waitForURL('**/waiting')
}

/** Open a repair of the header line without a pointer. */
export async function openRepairByKeyboard(page: Page, number: string): Promise<void> {
  const keys = new Keyboard(page)
  await page.goto('/repairs/new')
  for (const [label, text] of [['Repair number', number], ...HEADER_REPAIR.texts] as const)
    await keys.type(page.getByRole('textbox', { name: label, exact: true }), text)
  for (const [label, option] of [['Project', HEADER_REPAIR.project], ...HEADER_REPAIR.choices] as const)
    await keys.pick(page.getByRole('combobox', { name: label, exact: true }), option)
  for (const [name, option] of HEADER_REPAIR.groups) await keys.choose(page.getByRole('group', { name }), option)
  await keys.press(page.getByRole('button', { name: 'Open the repair' }))
  await page.waitForURL(`**/repairs/${number}`)
}

/** Sign, submit and release the open point without a pointer. */
export async function closeByKeyboard(page: Page, signs: Signs, releases: Releases): Promise<void> {
  const keys = new Keyboard(page)
  for (const [id, meaning] of signs) {
    const sheet = signSheet(page)
    if ((await sheet.getAttribute('open')) === null) await keys.press(sheet.locator('summary'))
    await keys.choose(sheet.getByRole('group', { name: 'Meaning' }), meaning)
    await keys.pick(sheet.getByLabel('Who signs'), demoPerson(id).name)
    await keys.type(sheet.getByLabel(new RegExp(`^Password of ${demoPerson(id).name}`)), DEMO_PASSWORD)
    await keys.press(sheet.getByRole('button', { name: `Sign: ${meaning}` }))
    const signed = page.getByRole('listitem').filter({ hasText: `${meaning}: ${demoPerson(id).name}` })
    await expect(signed).toHaveCount(1)
  }
  await keys.press(page.getByRole('button', { name: 'Submit for release' }))
  await expect(page.getByRole('listitem').filter({ hasText: /^Submitted/ })).toBeVisible()
  for (const [id, party] of releases) {
    const sheet = releaseSheet(page)
    const parties = sheet.getByRole('radiogroup', { name: 'Release for' })
    if (await parties.isVisible()) await keys.choose(parties, party)
    await keys.pick(sheet.getByLabel('Who signs'), demoPerson(id).name)
    await keys.type(sheet.getByLabel(new RegExp(`^Password of ${demoPerson(id).name}`)), DEMO_PASSWORD)
    await keys.press(sheet.getByRole('button', { name: 'Release to the plan' }))
    await expect(page.getByRole('listitem').filter({ hasText: new RegExp(`^Released for ${party}`) })).toHaveCount(1)
  }
}
