import { expect, type Page } from '@playwright/test'

/** A signature drawn with the pointer over the field for it, in one stroke. */
export async function drawSignature(page: Page, name: string): Promise<void> {
  const pad = page.getByRole('group', { name: `Signature of ${name}, drawn` }).getByRole('img')
  await pad.scrollIntoViewIfNeeded()
  const box = await pad.boundingBox()
  if (!box) throw new Error('no field to draw in')
  const at = (x: number, y: number) => [box.x + box.width * x, box.y + box.height * y] as const
  await page.mouse.move(...at(0.1, 0.6))
  await page.mouse.down()
  for (const [x, y] of [
    [0.3, 0.2],
    [0.4, 0.8],
    [0.6, 0.3],
    [0.9, 0.6],
  ] as const)
    await page.mouse.move(...at(x, y), { steps: 4 })
  await page.mouse.up()
  await expect(pad).toHaveAttribute('aria-label', 'Field to draw in, 1 stroke')
}
