import { expect, type Locator, type Page } from '@playwright/test'

const STOPS_MOST = 500

/** A person without a pointer: Tab, arrows, Enter, Space and what is typed. Focus is moved by keys alone, never set. */
export class Keyboard {
  constructor(readonly page: Page) {}

  /** Tab to a control, forwards or back, until it has the focus. */
  async to(control: Locator): Promise<void> {
    await expect(control).toBeVisible()
    for (let stops = 0; stops < STOPS_MOST; stops += 1) {
      const side = await sideOf(control)
      if (side === 'here') return
      await this.page.keyboard.press(side === 'after' ? 'Tab' : 'Shift+Tab')
    }
    throw new Error(`no way by Tab to ${control}`)
  }

  /** Type over what stands in a field. */
  async type(field: Locator, text: string): Promise<void> {
    await this.to(field)
    await this.page.keyboard.press('Control+A')
    await this.page.keyboard.type(text)
    await expect(field).toHaveValue(text)
  }

  /** Press a button, a link or the head of a fold. */
  async press(button: Locator, key: 'Enter' | 'Space' = 'Enter'): Promise<void> {
    await this.to(button)
    await this.page.keyboard.press(key)
  }

  /** Choose an option of a list by the arrows. */
  async pick(select: Locator, option: string): Promise<void> {
    await this.to(select)
    const count = await select.locator('option').count()
    for (let place = 0; place <= count; place += 1) {
      const shown = await select.evaluate((node) => (node as HTMLSelectElement).selectedOptions[0]?.textContent ?? '')
      if (shown.includes(option)) return
      await this.page.keyboard.press('ArrowDown')
    }
    throw new Error(`no option ${option}`)
  }

  /** Choose one of the words in a group: the first by Space, another by the arrows; those that may stay empty are each a stop of their own. */
  async choose(group: Locator, option: string): Promise<void> {
    const input = group
      .getByRole('radio', { name: option, exact: true })
      .or(group.getByRole('checkbox', { name: option, exact: true }))
    if ((await input.getAttribute('type')) === 'checkbox') return this.press(input, 'Space')
    const radios = group.getByRole('radio')
    const count = await radios.count()
    for (let stops = 0; stops < STOPS_MOST && !(await hasFocus(group)); stops += 1)
      await this.page.keyboard.press((await sideOf(radios.first())) === 'after' ? 'Tab' : 'Shift+Tab')
    for (let place = 0; place <= count; place += 1) {
      if (await hasFocus(input.locator('xpath=..'))) break
      await this.page.keyboard.press('ArrowRight')
    }
    if (!(await input.isChecked())) await this.page.keyboard.press('Space')
    await expect(input).toBeChecked()
  }

  /** Key a day or a time into its parts, in whichever order this browser shows them. */
  async keyParts(input: Locator, value: string, orders: readonly string[]): Promise<void> {
    await this.to(input)
    for (const keys of orders) {
      for (let parts = 0; parts < 4; parts += 1) await this.page.keyboard.press('ArrowLeft')
      await this.page.keyboard.type(keys)
      if (await input.evaluate((node, wanted) => (node as HTMLInputElement).value.startsWith(wanted), value)) return
    }
    throw new Error(`${value} could not be keyed`)
  }
}

/** Where a control lies from what has the focus. */
function sideOf(control: Locator): Promise<'here' | 'after' | 'before'> {
  return control.evaluate((node) => {
    const at = document.activeElement
    if (at === node) return 'here'
    if (!at || at === document.body) return 'after'
    return at.compareDocumentPosition(node) & Node.DOCUMENT_POSITION_FOLLOWING ? 'after' : 'before'
  })
}

function hasFocus(part: Locator): Promise<boolean> {
  return part.evaluate((node) => node.contains(document.activeElement))
}
