import type { Locator, Page } from '@playwright/test'

/** The fold of a nonconformance's next act, by its title. */
export function nextAct(page: Page, title: string): Locator {
  return page
    .getByRole('region', { name: 'Next acts' })
    .locator('details')
    .filter({ has: page.locator('summary', { hasText: new RegExp(`^${title}(?! anew)`) }) })
    .first()
}
