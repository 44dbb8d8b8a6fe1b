import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, test } from '@playwright/test'
import { E2E_PORT } from './places'
import { IN_PERSON } from './prepare-begun-repair'
import {
  history,
  makeKey,
  NUMBER,
  POINT,
  panel,
  recordCleanliness,
  releaseHere,
  signHere,
  takeAlong,
  trySigning,
} from './steps/begun-point'
import { drawSignature } from './steps/draw-signature'
import { expectUsable } from './steps/expect-usable'
import { openKeptBrowser } from './steps/kept-browser'
import { KeptServer } from './steps/kept-server'
import { signInAs } from './steps/people'
import { takeDemandedPhotos } from './steps/photos'
import { L1, QI } from './steps/walk'

const server = new KeptServer(E2E_PORT + 14, ['e2e/serve-kept.ts', 'begun'])
const profile = mkdtempSync(join(tmpdir(), 'underwrap-e2e-signing-'))
const [PIN_QI, PIN_L1] = ['271828', '141421']

test.afterAll(async () => {
  await server.remove()
  rmSync(profile, { recursive: true, force: true })
})

/** The browser of this test, on its own profile. */
const openBrowser = (offline: boolean) => openKeptBrowser(profile, server.url, { offline })

test('a point is signed, submitted and released with a PIN and no network, outlives a closed browser, and arrives once', async () => {
  server.setClock('09:10', '05-27')
  await server.start()
  let { context, page } = await openBrowser(false)
  await signInAs(page, QI)
  await takeAlong(page)
  await makeKey(page, QI, PIN_QI)
  await makeKey(page, L1, PIN_L1)
  await expectUsable(page)
  await page.locator('.bar details > summary').click()
  await expect(page.getByRole('link', { name: 'Sign on this device' })).toBeInViewport({ ratio: 1 })

  await context.setOffline(true)
  await server.stop()
  await recordCleanliness(page, '2')
  await takeDemandedPhotos(page, 2)
  await trySigning(page, L1, 'checked', '999998')
  await expect(page.getByText('The PIN is not right.')).toBeVisible()
  await expect(page.getByText('4 tries are left')).toBeVisible()
  await expect(history(page)).toHaveCount(0)
  await panel(page, /^Sign$/)
    .getByLabel('PIN of Maren Osterfalk')
    .fill(PIN_L1)
  await panel(page, /^Sign$/)
    .getByRole('button', { name: 'Sign: checked' })
    .click()
  await expect(history(page).filter({ hasText: 'checked: Maren Osterfalk' })).toContainText(
    'key of this device behind a PIN, without a network',
  )
  await signHere(page, QI, 'measured', PIN_QI)
  await expect(history(page).filter({ hasText: 'measured: Tobias Wrenfield' })).toContainText(
    'covers 1 entry and 2 photos of the device',
  )
  const sheet = panel(page, /^Sign$/)
  await sheet.getByLabel('Who signs').selectOption(IN_PERSON.id)
  await sheet
    .getByRole('group', { name: `Who sees ${IN_PERSON.name} sign` })
    .getByText('Tobias Wrenfield')
    .click()
  await sheet.getByRole('group', { name: 'Meaning' }).getByText('witnessed', { exact: true }).click()
  await sheet.getByLabel('PIN of Tobias Wrenfield').fill(PIN_QI)
  await expect(sheet.getByRole('button', { name: 'Sign: witnessed' })).toBeDisabled()
  await drawSignature(page, IN_PERSON.name)
  await expectUsable(page)
  await sheet.getByRole('button', { name: 'Sign: witnessed' }).click()
  await expect(history(page).filter({ hasText: `witnessed: ${IN_PERSON.name}` })).toContainText(
    'in person, seen by Tobias Wrenfield',
  )

  await page.getByRole('button', { name: 'Submit for release' }).click()
  await expect(history(page).filter({ hasText: 'Submitted' })).toContainText('Not yet sent')
  await releaseHere(page, L1, 'crew', PIN_L1)
  await expect(history(page).filter({ hasText: 'Released for crew' })).toHaveCount(1)
  await releaseHere(page, QI, null, PIN_QI)
  await expect(history(page).filter({ hasText: 'Released for inspector' })).toContainText('Not yet sent')

  await context.close()
  ;({ context, page } = await openBrowser(true))
  await page.goto(POINT)
  await expect(history(page).filter({ hasText: 'Released for inspector' })).toContainText('Not yet sent')
  await expect(page.locator('.page-head').getByText('Released', { exact: true })).toBeVisible()
  await expectUsable(page)

  server.setClock('11:30', '05-27')
  await server.start()
  await context.setOffline(false)
  await expect(page.locator('.outbox-line')).toHaveCount(0, { timeout: 60_000 })
  await page.goto(`/repairs/${NUMBER}/points/05`)
  await expect(page.locator('.page-head').getByText('Released', { exact: true })).toBeVisible()
  await expect(page.locator('article.group')).toHaveCount(1)
  for (const [line, method] of [
    ['checked: Maren Osterfalk', 'key of this device behind a PIN, without a network'],
    ['measured: Tobias Wrenfield', 'key of this device behind a PIN, without a network'],
    [`witnessed: ${IN_PERSON.name}`, 'in person, seen by Tobias Wrenfield; by key of this device behind a PIN'],
  ] as const) {
    await expect(history(page).filter({ hasText: line })).toHaveCount(1)
    await expect(history(page).filter({ hasText: line })).toContainText(method)
  }
  for (const party of ['crew', 'inspector'])
    await expect(history(page).filter({ hasText: `Released for ${party}` })).toHaveCount(1)
  await expect(page.getByText('A decision made without a network')).toHaveCount(0)
  await page.reload()
  await expect(history(page).filter({ hasText: 'Released for inspector' })).toHaveCount(1)
  await context.close()
})
