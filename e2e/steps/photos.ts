import { expect, type Locator, type Page } from '@playwright/test'
import sharp from 'sharp'

let drawn = 0

/** A picture unlike every other: blocks placed by a counter, with the words that it shows. */
export async function drawPhoto(words: string): Promise<Buffer> {
  drawn += 1
  let seed = drawn * 7919
  const next = (below: number) => {
    seed = (seed * 1103515245 + 12345) % 2147483648
    return seed % below
  }
  const blocks = Array.from(
    { length: 26 },
    () =>
      `<rect x="${next(900)}" y="${next(640)}" width="${60 + next(320)}" height="${50 + next(240)}" fill="rgb(${next(255)},${next(255)},${next(255)})"/>`,
  )
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="1000" height="750"><rect width="1000" height="750" fill="#777"/>${blocks.join('')}<text x="30" y="60" font-size="34" fill="#fff">${words.replaceAll(/[<>&]/g, ' ')}</text></svg>`
  return sharp(Buffer.from(svg)).jpeg({ quality: 85 }).toBuffer()
}

/** What the plan demands photos of, in a part of the screen. */
export function demandedPhotos(part: Page | Locator): Promise<string[]> {
  return part
    .locator('input[type=file][aria-label^="Photo: "]')
    .evaluateAll((inputs) => inputs.map((input) => (input.getAttribute('aria-label') ?? '').replace('Photo: ', '')))
}

/** Take so many photos on site as the plan demands at the open point, one of each. */
export async function takeDemandedPhotos(page: Page, count: number): Promise<void> {
  await expect(page.locator('input[type=file][aria-label^="Photo: "]')).toHaveCount(count)
  for (const label of await demandedPhotos(page)) {
    const photo = { name: 'photo.jpg', mimeType: 'image/jpeg', buffer: await drawPhoto(label) }
    await page.getByLabel(`Photo: ${label}`, { exact: true }).setInputFiles(photo)
    await page.getByRole('button', { name: 'Keep it' }).click()
    await expect(page.locator('.photo-demand').filter({ hasText: label }).getByText('1 of 1')).toBeVisible()
  }
}

/** Upload every photo that the plan demands at the open point. */
export async function uploadDemandedPhotos(page: Page): Promise<void> {
  const sheet = page
    .locator('section.sheet')
    .filter({ has: page.getByRole('heading', { name: 'Photos', exact: true }) })
  await sheet.getByLabel('Another photo', { exact: true }).waitFor({ state: 'attached' })
  for (const label of await demandedPhotos(sheet)) {
    const input = sheet.getByLabel(`Photo: ${label}`, { exact: true })
    const row = sheet.locator('.row.between').filter({ hasText: label })
    const [, present = '0', wanted = '1'] = /(\d+) of (\d+)/.exec((await row.textContent()) ?? '') ?? []
    for (let taken = Number(present); taken < Number(wanted); taken += 1) {
      await input.setInputFiles({ name: `photo-${drawn}.jpg`, mimeType: 'image/jpeg', buffer: await drawPhoto(label) })
      await expect(row.getByText(`${taken + 1} of ${wanted}`)).toBeVisible()
    }
  }
}
