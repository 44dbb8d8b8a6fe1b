import { expect, type Page, test } from '@playwright/test'
import { demoPerson } from '@/lib/server/demo/demo-people'
import { E2E_PORT } from './places'
import { comeBack, openDevice } from './steps/begun-device'
import { history, makeKey, NUMBER, POINT, panel, recordCleanliness, releaseHere, signHere } from './steps/begun-point'
import { expectUsable } from './steps/expect-usable'
import { KeptServer } from './steps/kept-server'
import { takeDemandedPhotos } from './steps/photos'
import { L1, QI } from './steps/walk'

const server = new KeptServer(E2E_PORT + 15, ['e2e/serve-kept.ts', 'begun'])
const [PIN_QI, PIN_L1] = ['271828', '141421']
const INSPECTOR = demoPerson(QI).name
const NOT_YET = 'Not yet sent'

test.afterAll(() => server.remove())

/** A fold of the open point, opened. */
async function openFold(page: Page, title: string) {
  const fold = page.locator('details.sheet').filter({ has: page.locator('summary', { hasText: title }) })
  await fold.locator('summary').click()
  return fold
}

/** Withdraw the release that the open point offers for a party. */
async function withdraw(page: Page, party: string, cause: string, reason: string): Promise<void> {
  const fold = await openFold(page, 'Withdraw a release')
  const choice = fold.getByLabel('Release')
  const value = await choice.locator('option', { hasText: party }).getAttribute('value')
  await choice.selectOption(value)
  await fold.getByLabel('Cause').fill(cause)
  await expect(fold.getByRole('button', { name: 'Withdraw', exact: true })).toBeDisabled()
  await fold.getByLabel('Reason').fill(reason)
  await fold.getByRole('button', { name: 'Withdraw', exact: true }).click()
  const line = history(page).filter({ hasText: `Released for ${party}` })
  await expect(line).toHaveCount(1)
  await expect(line).toContainText('then withdrawn at')
  await expect(line).toContainText(`${cause}: ${reason}; ${INSPECTOR}`)
  await expect(line).toContainText(NOT_YET)
}

/** One line of what was signed and decided at the open point, once, with its words. */
async function expectOnce(page: Page, title: string, ...words: string[]): Promise<void> {
  const line = history(page).filter({ hasText: title })
  await expect(line).toHaveCount(1)
  for (const one of words) await expect(line).toContainText(one)
  await expect(line).not.toContainText(NOT_YET)
}

test('a release is refused and another withdrawn, an attempt opened and a point marked not applicable with no network, and each stands in the record once', async ({
  browser,
}) => {
  server.setClock('09:10', '05-27')
  await server.start()
  const device = await openDevice(browser, server, QI)
  const { context, page } = device
  await makeKey(page, QI, PIN_QI)
  await makeKey(page, L1, PIN_L1)
  await context.setOffline(true)
  await server.stop()

  await recordCleanliness(page, '2')
  await takeDemandedPhotos(page, 2)
  await signHere(page, L1, 'checked', PIN_L1)
  await signHere(page, QI, 'measured', PIN_QI)
  await page.getByRole('button', { name: 'Submit for release' }).click()
  await releaseHere(page, L1, 'crew', PIN_L1)

  const hold = panel(page, /^Hold for/)
  const refuse = hold.getByRole('button', { name: `Refuse the release as ${INSPECTOR}` })
  await expect(refuse).toBeDisabled()
  await hold.getByLabel('Remark, or the reason of a refusal').fill('rust bloom at 6 o’clock')
  await expectUsable(page)
  await refuse.click()
  const refused = history(page).filter({ hasText: 'Release refused' })
  await expect(refused).toHaveCount(1)
  await expect(refused).toContainText('rust bloom at 6 o’clock')
  await expect(refused).toContainText(NOT_YET)
  await withdraw(page, 'crew', 'rust bloom', 'the band must be swept again')

  const next = await openFold(page, 'Open attempt 2')
  await next.getByLabel('Reason of the new attempt').fill('swept again from the steel')
  await next.getByRole('button', { name: 'Open attempt 2' }).click()
  await expect(page.locator('.page-head')).toContainText('attempt 1 of 2')
  await page.goto(POINT)
  await expect(page.locator('.page-head')).toContainText('attempt 2 of 2')
  await expect(history(page).filter({ hasText: 'Attempt 2 opened' })).toContainText(NOT_YET)

  await page.goto(`/site#repair=${NUMBER}&point=04`)
  await withdraw(page, 'inspector', 'durometer doubted', 'its block was not with it')
  await page.goto(`/site#repair=${NUMBER}&point=08`)
  const idle = await openFold(page, 'Mark it not applicable')
  await idle.getByLabel('Why this point does not apply').fill('the line was drained: nothing leaks')
  await idle.getByRole('button', { name: 'Not applicable', exact: true }).click()
  await expect(history(page).filter({ hasText: 'Not applicable' })).toContainText(NOT_YET)
  await expect(page.locator('.page-head').getByText('Not applicable', { exact: true })).toBeVisible()
  await expectUsable(page)

  server.setClock('11:30', '05-27')
  await server.start()
  await comeBack(device)
  await page.goto(`/repairs/${NUMBER}/points/05?attempt=1`)
  await expectOnce(page, 'Release refused', INSPECTOR, 'rust bloom at 6 o’clock')
  await expectOnce(page, 'Released for crew', 'then withdrawn at', 'rust bloom', INSPECTOR)
  for (const line of ['released: Maren Osterfalk', 'checked: Maren Osterfalk', `measured: ${INSPECTOR}`])
    await expectOnce(page, line, 'key of this device behind a PIN, without a network')
  await page.goto(`/repairs/${NUMBER}/points/05`)
  await expect(page.getByRole('link', { name: /^Attempt 2/ })).toBeVisible()
  await expectOnce(page, 'Attempt 2 opened', INSPECTOR, 'swept again from the steel')
  await page.goto(`/repairs/${NUMBER}/points/04`)
  await expectOnce(page, 'Released for inspector', 'then withdrawn at', 'durometer doubted', INSPECTOR)
  await page.goto(`/repairs/${NUMBER}/points/08`)
  await expectOnce(page, 'Not applicable', INSPECTOR, 'the line was drained: nothing leaks')

  await page.goto(`/repairs/${NUMBER}/trail`)
  for (const [what, times] of [
    ['release refused', 1],
    ['release withdrawn', 2],
    ['attempt opened', 1],
    ['marked not applicable', 1],
    ['released for crew', 1],
  ] as const) {
    const rows = page
      .getByRole('row')
      .filter({ has: page.getByRole('rowheader', { name: new RegExp(`^${what}`) }) })
      .filter({ hasText: 'an hour or more after it was keyed' })
    await expect(rows).toHaveCount(times)
    for (const row of await rows.all()) await expect(row).not.toContainText('server, clock')
  }
  await context.close()
})
