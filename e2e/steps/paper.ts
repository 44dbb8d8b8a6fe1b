import { expect, type Page } from '@playwright/test'
import sharp from 'sharp'
import { demoPerson } from '@/lib/server/demo/demo-people'
import { expectUsable } from './expect-usable'
import { signInAs } from './people'
import type { RecordFormHand } from './record-form'

/** What a copy from paper lacks before a second person checked it. */
export const UNCHECKED = /transcribed, not yet checked by a second person/

/** Key what stands beside a copy: who observed it as on the paper, its keeper and place, and a scan of its own. */
export async function keyPaper(page: Page, observer: string, picture: Buffer): Promise<void> {
  await page.getByLabel('Observed by, as on the paper').selectOption(observer)
  await page.getByLabel('Keeper of the paper').fill('Maren Osterfalk')
  await page.getByLabel('Place of the paper').fill('site file, crew cabin')
  const scan = await sharp(picture).flatten({ background: '#fff' }).jpeg().toBuffer()
  await page.getByLabel('Scan of the paper').setInputFiles({ name: 'sheet.jpg', mimeType: 'image/jpeg', buffer: scan })
  await expect(page.getByText('Scan attached: sheet.jpg')).toBeVisible()
}

/** Key a time as it stands on the paper: its fields are open from the start. */
export async function keyPaperTime(
  { scope }: RecordFormHand,
  label: string,
  day: string,
  clock: string,
): Promise<void> {
  await scope.getByLabel(`Day: ${label}`, { exact: true }).fill(`2026-${day}`)
  await scope.getByLabel(`Time: ${label}`, { exact: true }).fill(clock)
}

/** A second person finds the copy among what waits, compares it with its scan and says that it agrees. */
export async function checkPaperAs(page: Page, person: string, number: string, point: string): Promise<void> {
  await signInAs(page, person)
  const line = page.locator(`a[href^="/repairs/${number}/points/${point}/check/"]`)
  await expect(line).toContainText('To check against the paper')
  await line.click()
  await expect(page.getByRole('img', { name: /^Scan of the tally sheet/ })).toBeVisible()
  await expectUsable(page)
  await page.getByRole('button', { name: 'It agrees with the paper' }).click()
  await page.waitForURL(`**/repairs/${number}/points/${point}?attempt=1`)
  await expect(page.getByText(`Checked against the paper by ${demoPerson(person).name}`)).toBeVisible()
}
