import AxeBuilder from '@axe-core/playwright'
import { expect, type Page } from '@playwright/test'

/** Nothing serious stands against the open screen, by day and by night. */
export async function expectUsable(page: Page): Promise<void> {
  for (const theme of ['day', 'night']) {
    await page.evaluate((name) => {
      document.documentElement.dataset.theme = name
    }, theme)
    const { violations } = await new AxeBuilder({ page }).analyze()
    const serious = violations.filter(({ impact }) => impact === 'serious' || impact === 'critical')
    expect(serious.map(({ id, nodes }) => `${theme} ${id}: ${nodes.map((node) => node.html).join(' ')}`)).toEqual([])
  }
}
