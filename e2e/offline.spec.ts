import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, type Page, test } from '@playwright/test'
import { E2E_PORT } from './places'
import { expectUsable } from './steps/expect-usable'
import { fillCleanliness } from './steps/fill-cleanliness'
import { openKeptBrowser } from './steps/kept-browser'
import { KeptServer } from './steps/kept-server'
import { openRepair } from './steps/open-repair'
import { signInAs } from './steps/people'
import { takeDemandedPhotos } from './steps/photos'
import { RecordFormHand } from './steps/record-form'
import { takeToSite } from './steps/take-to-site'
import { waitForShell } from './steps/wait-for-shell'
import { QI } from './steps/walk'

const NUMBER = 'MD-0201'
const LOST = 'MD-0202'
const server = new KeptServer(E2E_PORT + 7)
const profile = mkdtempSync(join(tmpdir(), 'underwrap-e2e-browser-'))

test.afterAll(async () => {
  await server.remove()
  rmSync(profile, { recursive: true, force: true })
})

/** The browser of this test, on its own profile. */
const openBrowser = (offline: boolean) => openKeptBrowser(profile, server.url, { offline })

/** The mark of a record that is on this device alone. */
function notSent(page: Page) {
  return page.locator('article.group').getByText('Not yet sent')
}

function manifestIn(page: Page) {
  return page.locator('head > link[rel=manifest]')
}

async function expectManifest(page: Page) {
  await expect(manifestIn(page)).toHaveAttribute('href', '/manifest.webmanifest')
  const answer = await page.request.get('/manifest.webmanifest')
  expect(answer.headers()['content-type']).toBe('application/manifest+json')
  expect(await answer.json()).toMatchObject({ start_url: '/waiting', display: 'standalone' })
}

test('a whole point is captured without a network, outlives a reload and a closed browser, and arrives once', async () => {
  server.setClock('07:30')
  await server.start()
  let { context, page } = await openBrowser(false)
  await signInAs(page, QI)
  await openRepair(page, NUMBER)
  await takeToSite(page, NUMBER)
  await waitForShell(page)
  await expectManifest(page)

  await context.setOffline(true)
  await server.stop()
  await page.goto(`/repairs/${NUMBER}/points/05`)
  await page.waitForURL(`**/site#repair=${NUMBER}&point=05`)
  await expect(page.getByRole('heading', { name: 'Photos' })).toBeVisible()
  await expect(manifestIn(page)).toHaveCount(1)
  await expectUsable(page)
  await page.getByRole('link', { name: /^Surface cleanliness/ }).click()
  const form = new RecordFormHand(page)
  await form.stamp('Preparation finished')
  await form.stamp('Checked')
  await fillCleanliness(form)
  await page.getByRole('button', { name: 'Save to the record' }).click()
  await page.waitForURL(/\/site#repair=MD-0201&point=05&attempt=1$/)
  await expect(page.locator('article.group')).toHaveCount(1)
  await expect(notSent(page)).toBeVisible()
  await takeDemandedPhotos(page, 2)
  await expect(page.getByRole('link', { name: /^3 entries are not yet sent/ })).toBeVisible()

  await page.reload()
  await expect(notSent(page)).toBeVisible()
  const place = page.url()
  await page.getByRole('link', { name: 'To the page' }).press('Enter')
  await expect(page).toHaveURL(place)
  await expect(notSent(page)).toBeVisible()
  await context.close()
  ;({ context, page } = await openBrowser(true))
  await page.goto('/waiting')
  await page.waitForURL('**/site')
  await expect(page.getByRole('heading', { name: 'On this device' })).toBeVisible()
  await expect(page.getByText('3 entries since then on this device alone')).toBeVisible()
  await expectUsable(page)
  await page.getByRole('link', { name: `Repair ${NUMBER}` }).click()
  await expect(page.getByText('with 1 entry of this device that is not yet sent')).toBeVisible()
  await expectUsable(page)
  await page.getByRole('link', { name: /Surface cleanliness/ }).click()
  await expect(notSent(page)).toBeVisible()

  server.setClock('09:00')
  await server.start()
  await context.setOffline(false)
  await expect(page.locator('.outbox-line')).toHaveCount(0, { timeout: 60_000 })
  await expect(notSent(page)).toHaveCount(0)
  await page.goto(`/repairs/${NUMBER}/points/05`)
  await expect(page.locator('article.group').filter({ hasText: 'Sa 2 1/2' })).toHaveCount(1)
  await expect(page.locator('.thumbs figure')).toHaveCount(2)
  await page.reload()
  await expect(page.locator('article.group').filter({ hasText: 'Sa 2 1/2' })).toHaveCount(1)

  await page.getByText('Menu', { exact: true }).click()
  await page.getByRole('button', { name: /^Sign out/ }).click()
  await page.waitForURL('**/sign-in')
  await page.goto('/site')
  await expect(page.getByText('Nobody is signed in on this device.')).toBeVisible()
  const kept = await page.evaluate(
    () =>
      new Promise<number>((settle, fail) => {
        const asked = indexedDB.open('underwrap-site')
        asked.onerror = () => fail(asked.error)
        asked.onsuccess = () => {
          const counted = asked.result.transaction('packs').objectStore('packs').count()
          counted.onsuccess = () => settle(counted.result)
        }
      }),
  )
  expect(kept).toBe(0)
  const cached = await page.evaluate(async () => {
    const names = await caches.keys()
    const requests = await Promise.all(names.map(async (name) => (await caches.open(name)).keys()))
    return requests.flat().map((request) => new URL(request.url).pathname)
  })
  expect(cached.length).toBeGreaterThan(10)
  expect(cached.filter((path) => !/^\/(_next\/static|icons)\/|^\/site$/.test(path))).toEqual([])
  await context.close()
})

test('a form of the record that loses the server keeps what was keyed; what the server refuses waits for a person', async () => {
  server.setClock('09:00')
  await server.start()
  const { context, page } = await openBrowser(false)
  await signInAs(page, QI)
  await openRepair(page, LOST)
  await page.goto(`/repairs/${LOST}/points/05/record/remark?attempt=1`)
  await new RecordFormHand(page).key('Remark', 'band wiped twice')
  await waitForShell(page)
  await server.stop()
  await page.getByRole('button', { name: 'Save to the record' }).click()
  await page.waitForURL(`**/site#repair=${LOST}&point=05&attempt=1`)
  await expect(page.getByText(`${LOST} is not on this device.`)).toBeVisible()
  await page.getByRole('link', { name: '1 entry is not yet sent' }).click()
  await expect(page.getByRole('listitem').filter({ hasText: 'Remark' })).toContainText('Waits')

  server.setClock('09:00', '05-16')
  await server.start()
  await page.getByRole('button', { name: 'Send now' }).click()
  await expect(page.getByText('The time lies ahead of the server’s clock.')).toBeVisible()
  await expect(page.getByRole('link', { name: /^1 entry is not yet sent, .*1 refused$/ })).toBeVisible()
  await expectUsable(page)
  await page.getByRole('button', { name: 'Set aside', exact: true }).click()
  await expect(page.getByRole('button', { name: /^Set it aside/ })).toBeDisabled()
  server.setClock('09:30')
  await page.getByRole('button', { name: 'Try again' }).click()
  await expect(page.locator('.outbox-line')).toHaveCount(0)
  await page.goto(`/repairs/${LOST}/points/05`)
  await expect(page.locator('article.group').filter({ hasText: 'band wiped twice' })).toHaveCount(1)
  await context.close()
})
