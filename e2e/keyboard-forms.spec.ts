import { expect, test } from '@playwright/test'
import { FORMS } from '@/lib/capture/forms/form-table'
import { DEMO_URL } from './places'
import { expectLargeTargets, expectTabbed } from './steps/expect-tabbed'
import { signInAs } from './steps/people'
import { QI } from './steps/walk'

test.use({ baseURL: DEMO_URL })

test('every control of every form is reached by Tab, in order, with a focus that is seen, and is large enough for a glove', async ({
  page,
}) => {
  await signInAs(page, QI)
  const types = Object.keys(FORMS)
  expect(types.length).toBeGreaterThan(30)
  for (const type of types) {
    await page.goto(`/repairs/MD-0043/points/16/record/${type}?attempt=1`)
    await expect(page.getByRole('button', { name: 'Save to the record' })).toBeVisible()
    await expectLargeTargets(page, type)
    expect(await expectTabbed(page, type), type).toBeGreaterThan(2)
  }
})

test('the screens where a person signs, releases, opens a repair or raises a nonconformance are walked by Tab', async ({
  page,
}) => {
  await page.goto('/sign-in')
  await expectTabbed(page, 'sign in')
  await signInAs(page, QI)
  for (const address of [
    '/repairs/new',
    '/repairs/MD-0043/points/02?attempt=1',
    '/repairs/MD-0043/points/09?attempt=1',
    '/nonconformances/new?repair=MD-0043&point=07&attempt=1',
    '/nonconformances/NCR-0009',
  ]) {
    await page.goto(address)
    await expect(page.locator('main:not([aria-busy])')).toBeVisible()
    await page.evaluate(() => {
      for (const fold of document.querySelectorAll('main details')) fold.setAttribute('open', '')
    })
    expect(await expectTabbed(page, address), address).toBeGreaterThan(3)
    await expectLargeTargets(page, address)
  }
})
