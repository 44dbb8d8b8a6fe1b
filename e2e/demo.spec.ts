import { expect, test } from '@playwright/test'
import { DEMO_URL } from './places'
import { fillCleanliness } from './steps/fill-cleanliness'
import { fillPermit } from './steps/fill-permit'
import { release, sign, signInAs, submit } from './steps/people'
import { uploadDemandedPhotos } from './steps/photos'
import { L1, QI, Walk } from './steps/walk'

test.use({ baseURL: DEMO_URL })

/** What each repair of the demonstration shows on its page: status, and figures by point and attempt. */
const SHOWN = [
  [
    'MD-0041',
    'In service',
    [
      ['16', 1, ['20', 'lowest 76', 'mean 79.45', 'Pass']],
      ['17', 1, ['lowest 6.9', 'Pass']],
      ['06', 1, ['mean 86.3']],
    ],
  ],
  [
    'MD-0042',
    'Accepted under concession',
    [
      ['16', 1, ['lowest 63', 'mean 71.50', 'Fail']],
      ['16', 2, ['lowest 69', 'mean 74.90', 'Fail']],
      ['16', 3, ['lowest 76', 'mean 78.40', 'Pass']],
      ['14', 1, ['In question', 'qualification corrected']],
      ['15', 2, ['12.9 °C', 'Fail, conceded']],
      ['17', 1, ['lowest 5.7', 'Pass']],
    ],
  ],
  [
    'MD-0043',
    'On hold',
    [
      ['05', 1, ['Lapsed']],
      ['07', 1, ['In question', '0.9 K']],
      ['09', 1, ['Release withdrawn', 'contradict']],
      ['14', 1, ['window']],
    ],
  ],
  [
    'MD-0044',
    'In service',
    [
      ['16', 1, ['lowest 74', 'mean 76.25', 'Pass']],
      ['17', 1, ['lowest 3.7', 'Pass']],
      ['14', 1, ['2.93 min', '57.3', 'Pass']],
    ],
  ],
] as const

for (const [number, status, points] of SHOWN) {
  test(`${number} of the demonstration shows its status, verdicts, minima and means`, async ({ page }) => {
    await signInAs(page, QI)
    await page.goto(`/repairs/${number}`)
    await expect(page.locator('.page-head')).toContainText(status)
    for (const [point, attempt, texts] of points) {
      await page.goto(`/repairs/${number}/points/${point}?attempt=${attempt}`)
      for (const text of texts) await expect(page.locator('main:not([aria-busy])')).toContainText(text)
    }
  })
}

test('the inspector prepares again what lapsed in MD-0043: permit renewed, point 05 recorded and released in a second attempt', async ({
  page,
}) => {
  await signInAs(page, QI)
  const walk = new Walk(page, 'MD-0043', '05-29')
  const permit = await walk.form('02', 'permit')
  await fillPermit(permit, {
    permit: 'PTW-2-0460',
    from: [walk.day, '07:00'],
    to: ['05-30', '18:00'],
    pressure: '0.30',
  })
  await permit.save()
  await sign(page, L1, 'checked')
  await submit(page)
  await release(page, L1, 'crew')
  await page.goto('/repairs/MD-0043/points/05?attempt=1')
  await page.getByText('Open attempt 2', { exact: true }).first().click()
  await page.getByLabel('From nonconformance').selectOption({ label: 'NCR-0009' })
  await page.getByLabel('Reason of the new attempt').fill('Stripped; prepared again from the steel.')
  await page.getByRole('button', { name: 'Open attempt 2' }).click()
  await expect(page.getByRole('link', { name: /^Attempt 2/ })).toBeVisible()
  const clean = await walk.form('05', 'cleanliness', 2)
  await clean.stamp('Preparation finished')
  await clean.stamp('Checked')
  await fillCleanliness(clean, { dust: '1', salts: ['12', '9', '14'], prepared: '205' })
  await clean.save()
  await uploadDemandedPhotos(page)
  await sign(page, L1, 'checked')
  await sign(page, QI, 'measured')
  await submit(page)
  await release(page, L1, 'crew')
  await release(page, QI, 'inspector')
  await expect(page.locator('.page-head')).toContainText('Released')
})
