import { expect, type Page, test } from '@playwright/test'
import { DEMO_URL } from './places'
import { signInAs } from './steps/people'
import { waitForShell } from './steps/wait-for-shell'
import { QI } from './steps/walk'

test.use({ baseURL: DEMO_URL })

/** Choose a file on the check page and wait for its answer. */
async function choose(page: Page, name: string, buffer: Buffer, answer: string): Promise<void> {
  await page.getByLabel(/Choose a dossier|\.pdf|\.txt/).setInputFiles({ name, mimeType: 'application/pdf', buffer })
  await expect(page.getByText(`${(buffer.length / 1e6).toFixed(1)} MB. Choose another`)).toBeVisible()
  await expect(page.locator('[data-answer]')).toHaveAttribute('data-answer', answer, { timeout: 60_000 })
}

test('a dossier is checked in the browser by a stranger: nothing is sent, it works without a network, and a changed byte is named', async ({
  page,
  browser,
}) => {
  await signInAs(page, QI)
  const response = await page.request.get('/api/dossiers/MD-0042/review', { timeout: 120_000 })
  expect(response.ok()).toBe(true)
  const dossier = await response.body()
  const changed = Buffer.from(dossier)
  const at = changed.indexOf('/DCTDecode') + 1000
  changed[at] = (changed[at] ?? 0) ^ 1

  // whose device holds the program of the app already is answered too
  await waitForShell(page)
  await page.goto('/check')
  await expect(page.locator('[data-ready="true"]')).toBeVisible()
  await choose(page, 'MD-0042.pdf', dossier, 'intact')

  const context = await browser.newContext({ viewport: { width: 390, height: 844 } })
  const stranger = await context.newPage()
  await stranger.goto(`${DEMO_URL}/check`)
  await expect(stranger.locator('[data-ready="true"]')).toBeVisible()
  const sent: string[] = []
  context.on('request', (request) => sent.push(request.url()))

  await choose(stranger, 'MD-0042.pdf', dossier, 'intact')
  const answer = stranger.locator('[data-answer]')
  await expect(answer).toContainText('Intact: the file is whole')
  await expect(answer).toContainText('Signer not known to you')
  await expect(answer).toContainText(/(\d+) of \1 agree/)
  await expect(answer).toContainText('repair MD-0042')

  await context.setOffline(true)
  await choose(stranger, 'changed.pdf', changed, 'broken')
  await expect(answer).toContainText('A photo in the file is not the one that was recorded')
  await expect(answer).toContainText('The file was changed after it was signed')

  await choose(stranger, 'MD-0042.pdf', dossier, 'intact')
  const fingerprint =
    (await answer
      .locator('.check-claims dd')
      .filter({ hasText: /^([0-9a-f]{4} ?){16}$/ })
      .textContent()) ?? ''
  await stranger.getByText('Whose is it? Give something that you trust').click()
  await stranger.getByLabel('Fingerprint of the certificate').fill(fingerprint)
  await stranger.getByRole('button', { name: 'Check again' }).click()
  await expect(answer).toContainText('Signer known')
  await stranger
    .getByLabel('Fingerprint of the certificate')
    .fill(fingerprint.replace(/^./, (digit) => (digit === '0' ? '1' : '0')))
  await stranger.getByRole('button', { name: 'Check again' }).click()
  await expect(answer).toHaveAttribute('data-answer', 'broken')
  await expect(answer).toContainText('Other signer')

  await choose(stranger, 'nothing.pdf', Buffer.alloc(1_500_000, 'x'), 'unreadable')
  expect(sent).toEqual([])
  await context.close()
})
