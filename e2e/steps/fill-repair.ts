import type { Page } from '@playwright/test'
import { HEADER_REPAIR } from './header-repair'

/** Fill the fields of a new repair of the header line beside its number and project. */
export async function fillRepair(page: Page): Promise<void> {
  for (const [label, text] of HEADER_REPAIR.texts)
    await page.getByRole('textbox', { name: label, exact: true }).fill(text)
  for (const [label, option] of HEADER_REPAIR.choices) {
    const select = page.getByRole('combobox', { name: label, exact: true })
    await select.selectOption((await select.locator('option', { hasText: option }).first().getAttribute('value')) ?? '')
  }
  for (const [name, option] of HEADER_REPAIR.groups)
    await page.getByRole('group', { name }).getByText(option, { exact: true }).click()
}
