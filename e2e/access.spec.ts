import { readFileSync } from 'node:fs'
import { expect, type Page, test } from '@playwright/test'
import { DEMO_URL, E2E_PORT } from './places'
import { expectAccessible } from './steps/expect-accessible'
import { KeptServer } from './steps/kept-server'
import { signInAs } from './steps/people'
import { SAMPLES, type Sample } from './steps/screen-samples'
import { isOfRoute, screensOfBuild } from './steps/screens-of-build'
import { takeToSite } from './steps/take-to-site'

test.use({ baseURL: DEMO_URL })

const SCREENS = screensOfBuild()
const READERS = [...new Set(SCREENS.map((route) => SAMPLES[route]?.as ?? null))]
/** Routes whose address leads on to another screen, by what they are for. */
const LEADS_ON: Readonly<Record<string, string>> = { '/': '/waiting' }

test('every screen of the built app has an example, and no example is of a screen that is gone', () => {
  expect(SCREENS.length).toBeGreaterThan(40)
  expect(SCREENS.filter((route) => !SAMPLES[route])).toEqual([])
  expect(Object.keys(SAMPLES).filter((route) => !SCREENS.includes(route))).toEqual([])
  for (const { at, lookedAtIn } of Object.values(SAMPLES))
    if (at.length === 0) expect(readFileSync(lookedAtIn ?? '', 'utf8')).toContain('await expectUsable(page)')
})

for (const reader of READERS)
  test(`nothing serious stands against any screen for ${reader ?? 'a stranger'}, on a phone and a desk, by day and by night`, async ({
    page,
  }) => {
    test.setTimeout(600_000)
    if (reader) await signInAs(page, reader)
    for (const route of SCREENS.filter((one) => (SAMPLES[one]?.as ?? null) === reader)) {
      const { takes = null, isFirstStart = false, at } = SAMPLES[route] ?? { at: [] }
      if (isFirstStart) continue
      if (takes) await takeToSite(page, takes)
      for (const sample of at) {
        await openSample(page, route, sample)
        await expectAccessible(page, route)
      }
    }
  })

test('nothing serious stands against the screen of an empty store', async ({ page }) => {
  const server = new KeptServer(E2E_PORT + 8, ['lib/cli/serve.ts', 'real'])
  try {
    await server.start()
    await page.goto(`${server.url}/setup`)
    await expect(page.getByRole('heading', { name: 'First start' })).toBeVisible()
    await expectAccessible(page, '/setup')
  } finally {
    await server.remove()
  }
})

async function openSample(page: Page, route: string, sample: Sample): Promise<void> {
  const address = typeof sample === 'string' ? sample : await linkOn(page, sample.linkOn, route)
  const isFound = route !== '/_not-found'
  if (isFound) expect(isOfRoute(address, route), `${address} is of ${route}`).toBe(true)
  // from one place on site to the next the browser stays in its page: it is asked for anew
  const reply = (await page.goto(address)) ?? (await page.reload())
  expect(reply?.status(), address).toBe(isFound ? 200 : 404)
  if (isFound) expect(isOfRoute(new URL(page.url()).pathname, LEADS_ON[route] ?? route), page.url()).toBe(true)
  await expect(page.locator('main:not([aria-busy])').first()).toBeVisible()
}

async function linkOn(page: Page, screen: string, route: string): Promise<string> {
  await page.goto(screen)
  await page.locator('main a[href]').first().waitFor()
  const hrefs = await page
    .locator('a[href]')
    .evaluateAll((links) => links.map((link) => link.getAttribute('href') ?? ''))
  return hrefs.find((href) => isOfRoute(href, route)) ?? `no link to ${route} on ${screen}`
}
