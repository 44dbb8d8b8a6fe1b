import { expect, type Locator, type Page } from '@playwright/test'

/** Hands on a point form: by the labels that a person reads. */
export class RecordFormHand {
  constructor(
    readonly page: Page,
    readonly scope: Locator = page.locator('form.form'),
  ) {}

  within(legend: string): RecordFormHand {
    return new RecordFormHand(this.page, this.scope.getByRole('group', { name: legend, exact: true }))
  }

  async key(label: string, text: string): Promise<void> {
    const field = this.scope.getByRole('textbox', { name: labelled(label) }).first()
    await field.fill(text)
  }

  async choose(legend: string, option: string): Promise<void> {
    await this.scope
      .getByRole('group', { name: labelled(legend) })
      .last()
      .getByText(option, { exact: true })
      .click()
  }

  async pick(label: string, option: string): Promise<void> {
    const select = this.scope.getByRole('combobox', { name: labelled(label) }).first()
    const value = await select.locator('option', { hasText: option }).first().getAttribute('value')
    await select.selectOption(value ?? option)
  }

  async stamp(label: string): Promise<void> {
    await this.scope
      .getByRole('button', { name: `Stamp now: ${label}`, exact: true })
      .first()
      .click()
    await expect(
      this.scope
        .getByRole('group', { name: labelled(label) })
        .first()
        .getByRole('status'),
    ).not.toHaveText('no time yet')
  }

  async time(label: string, day: string, clock: string): Promise<void> {
    await this.scope
      .getByRole('button', { name: `Key the time: ${label}`, exact: true })
      .first()
      .click()
    await this.scope.getByLabel(`Day: ${label}`, { exact: true }).first().fill(`2026-${day}`)
    await this.scope.getByLabel(`Time: ${label}`, { exact: true }).first().fill(clock)
  }

  async add(label: string): Promise<void> {
    await this.scope.getByRole('button', { name: label, exact: true }).first().click()
  }

  /** Key a grid of marks with the keyboard, Enter from mark to mark. */
  async marks(legend: string, readings: readonly string[]): Promise<void> {
    const grid = this.scope
      .locator('fieldset[data-marks]')
      .filter({ has: this.page.locator('legend', { hasText: legend }) })
      .first()
    await grid.getByRole('button', { name: 'Key the marks' }).click()
    for (const reading of readings) {
      if (reading === 'TW') {
        await grid.getByRole('button', { name: 'Value is special' }).click()
        await this.page.getByRole('dialog').getByRole('button', { name: 'Through-wall' }).click()
        continue
      }
      await this.page.keyboard.type(reading)
      await this.page.keyboard.press('Enter')
    }
    await expect(grid.getByText(`${readings.length} of ${readings.length}`)).toBeVisible()
  }

  /** Key a grid with the thumb's own keys. */
  async thumb(legend: string, readings: readonly string[]): Promise<void> {
    const grid = this.scope
      .locator('fieldset[data-marks]')
      .filter({ has: this.page.locator('legend', { hasText: legend }) })
      .first()
    await grid.getByRole('button', { name: 'Key the marks' }).click()
    const pad = grid.getByRole('group', { name: 'Keys' })
    for (const reading of readings) {
      for (const digit of reading)
        await pad
          .getByRole('button', { name: digit === '.' ? 'Point' : digit, exact: true })
          .dispatchEvent('pointerdown')
      await pad.getByRole('button', { name: 'Next mark' }).click()
    }
    await expect(grid.getByText(`${readings.length} of ${readings.length}`)).toBeVisible()
  }

  async save(): Promise<void> {
    await this.page.getByRole('button', { name: 'Save to the record' }).click()
    await this.page.waitForURL(/\/points\/\d\d\?attempt=\d+$/)
  }
}

/** A label as screen readers join it: the words, then perhaps that it may stay empty. */
export function labelled(label: string): RegExp {
  return new RegExp(`^${label.replaceAll(/[.*+?^${}()|[\]\\]/g, '\\$&')}( \\(may stay empty\\))?$`)
}
