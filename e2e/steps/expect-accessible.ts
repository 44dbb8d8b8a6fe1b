import AxeBuilder from '@axe-core/playwright'
import { expect, type Page } from '@playwright/test'

const SIZES = [
  { width: 390, height: 844 },
  { width: 1280, height: 800 },
]
/** Rules that read colours: all that another theme can change. */
const COLOUR_RULES = ['color-contrast', 'link-in-text-block']

type Finding = { id: string; impact?: string | null; nodes: { html: string }[] }
type Axe = { run(on: Document, options: object): Promise<{ violations: Finding[] }> }

/**
 * Nothing serious or critical stands against the open screen, at a phone's and a desk's size, by day and by night. The screen is loaded once: size and theme change in place, and by night only
 * what reads colours is asked again.
 */
export async function expectAccessible(page: Page, screen: string): Promise<void> {
  const found: string[] = []
  let isInPage = false
  for (const size of SIZES) {
    await page.setViewportSize(size)
    for (const theme of ['day', 'night']) {
      await page.evaluate((name) => {
        document.documentElement.dataset.theme = name
      }, theme)
      const violations: Finding[] = isInPage
        ? await askAgain(page, theme === 'night' ? COLOUR_RULES : null)
        : (
            await new AxeBuilder({ page })
              .setLegacyMode(true)
              .options({ resultTypes: ['violations'] })
              .analyze()
          ).violations
      isInPage = true
      for (const { id, impact, nodes } of violations)
        if (impact === 'serious' || impact === 'critical')
          found.push(`${size.width} ${theme} ${id}: ${nodes.map((node) => node.html.slice(0, 200)).join(' | ')}`)
    }
  }
  expect.soft(found, screen).toEqual([])
}

/** Ask the checker that the first look left in the page: bringing it in again costs more than the look. */
function askAgain(page: Page, rules: readonly string[] | null): Promise<Finding[]> {
  return page.evaluate(async (values) => {
    const { axe } = window as unknown as { axe: Axe }
    const { violations } = await axe.run(document, {
      resultTypes: ['violations'],
      ...(values ? { runOnly: { type: 'rule', values } } : {}),
    })
    return violations.map(({ id, impact, nodes }) => ({
      id,
      impact: impact ?? null,
      nodes: nodes.map(({ html }) => ({ html })),
    }))
  }, rules)
}
