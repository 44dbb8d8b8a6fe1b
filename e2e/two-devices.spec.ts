import { expect, type Locator, type Page, test } from '@playwright/test'
import { E2E_PORT } from './places'
import { comeBack, type Device, openDevice } from './steps/begun-device'
import { makeKey, NUMBER, POINT, recordCleanliness, releaseHere, signHere } from './steps/begun-point'
import { dossierText } from './steps/dossier-text'
import { expectUsable } from './steps/expect-usable'
import { KeptServer } from './steps/kept-server'
import { takeDemandedPhotos } from './steps/photos'
import { L1, QI } from './steps/walk'

const PIN = '161803'
const SAID = 'dust tape pressed again before both: class 2'
const RULED = 'the other record was of the first tape'
const WAYS = {
  'at the desk': ruleAtDesk,
  'on a phone without a network': ruleBelow,
} as const

/** Let Maren's record govern, in what shows both. */
async function choose(contradiction: Locator): Promise<void> {
  await contradiction
    .getByRole('radiogroup', { name: 'Record that governs' })
    .getByText(/^Maren Osterfalk/)
    .click()
  await contradiction.getByLabel('Reason').fill(SAID)
  await contradiction.getByRole('button', { name: 'Let it govern' }).click()
  await expect(contradiction).toHaveCount(0)
}

function contradictionOn(page: Page): Locator {
  return page.locator('section.note').filter({ hasText: 'Two records contradict each other' })
}

/** Let the release stand that did not know the other record, in what shows it. */
async function rule(ruling: Locator): Promise<void> {
  await expect(ruling).toContainText('released for crew')
  await expect(ruling).toContainText('recorded: surface cleanliness')
  await ruling.getByText('The decision stands', { exact: true }).click()
  await ruling.getByLabel('Reason').fill(RULED)
  await ruling.getByRole('button', { name: 'Rule on it' }).click()
  await expect(ruling).toHaveCount(0)
}

function rulingOn(page: Page): Locator {
  return page.locator('section.note').filter({ hasText: 'did not know all of the record' })
}

async function ruleAtDesk({ page }: Device): Promise<void> {
  await choose(contradictionOn(page))
  await expect(page.getByText('One record governs, all are kept')).toBeVisible()
  await rule(rulingOn(page))
}

/** Taken along anew, the phone knows both records and the release: the inspector rules down there. */
async function ruleBelow(phone: Device, server: KeptServer): Promise<void> {
  const { page } = phone
  await page.goto('/site')
  await page.getByRole('button', { name: 'Take it anew' }).click()
  await expect(page.getByRole('link', { name: /05 .*2 conflicts wait for a ruling/ })).toBeVisible()
  await phone.context.setOffline(true)
  await page.goto(POINT)
  await expect(contradictionOn(page).locator('.conflict-sides article')).toHaveCount(2)
  await expectUsable(page)
  await choose(contradictionOn(page))
  await rule(rulingOn(page))
  const ruled = page.locator('section.sheet').filter({ hasText: 'Conflicts, ruled on' }).getByRole('listitem')
  await expect(ruled.filter({ hasText: 'Not yet sent' })).toHaveCount(2)
  await expectUsable(page)
  await expect(page.locator('.outbox-line')).toContainText('2 entries are not yet sent')
  server.setClock('10:40', '05-27')
  await comeBack(phone)
  await page.goto(`/repairs/${NUMBER}/points/05`)
}

for (const [place, [way, ruleThere]] of Object.entries(WAYS).entries())
  test(`two devices record one point apart and one releases it: both records stay, and an inspector rules on both ${way}`, async ({
    browser,
  }) => {
    const server = new KeptServer(E2E_PORT + 13 + 6 * place, ['e2e/serve-kept.ts', 'begun'])
    try {
      server.setClock('09:10', '05-27')
      await server.start()
      const tablet = await openDevice(browser, server, L1)
      await makeKey(tablet.page, L1, PIN)
      await makeKey(tablet.page, QI, PIN)
      const phone = await openDevice(browser, server, QI)
      for (const { context } of [tablet, phone]) await context.setOffline(true)

      await recordCleanliness(phone.page, '3')
      await recordCleanliness(tablet.page, '2')
      await takeDemandedPhotos(tablet.page, 2)
      await signHere(tablet.page, L1, 'checked', PIN)
      await signHere(tablet.page, QI, 'measured', PIN)
      await tablet.page.getByRole('button', { name: 'Submit for release' }).click()
      await releaseHere(tablet.page, L1, 'crew', PIN)
      await expect(tablet.page.getByRole('listitem').filter({ hasText: 'Released for crew' })).toHaveCount(1)
      server.setClock('10:30', '05-27')
      await comeBack(phone)
      await comeBack(tablet)

      const { page } = phone
      await page.goto('/waiting')
      await expect(page.getByRole('link', { name: /05 .*2 conflicts wait for a ruling/ })).toBeVisible()
      await page.goto(`/repairs/${NUMBER}`)
      await expect(page.getByText('A decision made without a network waits for a ruling at point 05.')).toBeVisible()
      await expect(page.getByText('Two records contradict each other at point 05.')).toBeVisible()
      await page.goto(`/repairs/${NUMBER}/points/05`)
      const sides = page.locator('.conflict-sides article')
      await expect(sides).toHaveCount(2)
      await expect(sides.filter({ hasText: 'Maren Osterfalk' })).toHaveCount(1)
      await expect(sides.filter({ hasText: 'Tobias Wrenfield' })).toHaveCount(1)
      await expectUsable(page)

      await ruleThere(phone, server)
      await expect(sides).toHaveCount(0)
      await expect(rulingOn(page)).toHaveCount(0)
      await expect(page.getByText('One record governs, all are kept')).toBeVisible()
      await expect(page.getByRole('heading', { name: 'Conflicts, ruled on' })).toBeVisible()
      await expect(page.locator('article.group')).toHaveCount(2)
      await page.goto('/waiting')
      await expect(page.getByText('conflicts wait for a ruling')).toHaveCount(0)

      const text = await dossierText(page, NUMBER)
      expect(text).toContain(SAID)
      expect(text).toContain(`decision stands. ${RULED}`)
      expect(text).toMatch(/Two records at one time: cleanliness by .*Tobias Wrenfield/)
      expect(text).toContain('key of this device behind a PIN, without a network')
      expect(text.match(/Surface cleanliness/g)?.length ?? 0).toBeGreaterThan(1)
      for (const { context } of [tablet, phone]) await context.close()
    } finally {
      await server.remove()
    }
  })
