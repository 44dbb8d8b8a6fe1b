import type { Page } from '@playwright/test'

/** Open a repair of the header line in the test store, by its page. */
export async function openRepair(page: Page, number: string): Promise<void> {
  await page.goto('/repairs/new')
  for (const [label, text] of [
    ['Repair number', number],
    ['Line number', 'MDW-200-HD1-0127'],
    ['What the line is', 'header'],
    ['Datum', 'flange F-3'],
    ['Leak from the datum, mm', '860'],
  ] as const)
    await page.getByRole('textbox', { name: label, exact: true }).fill(text)
  for (const [label, option] of [
    ['Project', 'QDM-SHAFT-2'],
    ['Specification', 'QP-MD-12'],
    ['Inspection plan', 'ITP-MD-12'],
    ['Clock position of the leak', '6 o’clock'],
  ] as const) {
    const select = page.getByRole('combobox', { name: label, exact: true })
    await select.selectOption((await select.locator('option', { hasText: option }).first().getAttribute('value')) ?? '')
  }
  await page.getByRole('group', { name: 'Kind of leak arrest' }).getByText('tapered plug', { exact: true }).click()
  await page.getByRole('group', { name: 'Geometry' }).getByText('straight', { exact: true }).click()
  await page.getByRole('button', { name: 'Open the repair' }).click()
  await page.waitForURL(`**/repairs/${number}`)
}
