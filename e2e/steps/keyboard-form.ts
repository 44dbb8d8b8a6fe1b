import { expect, type Locator, type Page } from '@playwright/test'
import { Keyboard } from './keyboard'
import { labelled, RecordFormHand } from './record-form'

/** A point form filled by the keyboard alone. */
export class KeyboardForm extends RecordFormHand {
  private readonly keys: Keyboard

  constructor(page: Page, scope?: Locator) {
    super(page, scope)
    this.keys = new Keyboard(page)
  }

  override within(legend: string): KeyboardForm {
    return new KeyboardForm(this.page, this.scope.getByRole('group', { name: legend, exact: true }))
  }

  override key(label: string, text: string): Promise<void> {
    return this.keys.type(this.scope.getByRole('textbox', { name: labelled(label) }).first(), text)
  }

  override choose(legend: string, option: string): Promise<void> {
    return this.keys.choose(this.scope.getByRole('group', { name: labelled(legend) }).last(), option)
  }

  override pick(label: string, option: string): Promise<void> {
    return this.keys.pick(this.scope.getByRole('combobox', { name: labelled(label) }).first(), option)
  }

  override async stamp(label: string): Promise<void> {
    await this.keys.press(this.scope.getByRole('button', { name: `Stamp now: ${label}`, exact: true }).first())
    const group = this.scope.getByRole('group', { name: labelled(label) }).first()
    await expect(group.getByRole('status')).not.toHaveText('no time yet')
  }

  override async time(label: string, day: string, clock: string): Promise<void> {
    await this.keys.press(this.scope.getByRole('button', { name: `Key the time: ${label}`, exact: true }).first())
    const [month = '', date = ''] = day.split('-')
    const [hour = '', minute = ''] = clock.split(':')
    await this.keys.keyParts(this.scope.getByLabel(`Day: ${label}`, { exact: true }).first(), `2026-${day}`, [
      `${date}${month}2026`,
      `${month}${date}2026`,
      `2026${month}${date}`,
    ])
    const twelve = String(Number(hour) % 12 || 12).padStart(2, '0')
    await this.keys.keyParts(this.scope.getByLabel(`Time: ${label}`, { exact: true }).first(), clock, [
      `${hour}${minute}00`,
      `${twelve}${minute}00${Number(hour) < 12 ? 'A' : 'P'}`,
    ])
  }

  override add(label: string): Promise<void> {
    return this.keys.press(this.scope.getByRole('button', { name: label, exact: true }).first())
  }

  override async marks(legend: string, readings: readonly string[]): Promise<void> {
    const grid = this.scope
      .locator('fieldset[data-marks]')
      .filter({ has: this.page.locator('legend', { hasText: legend }) })
      .first()
    await this.keys.to(grid.locator('.cell').first())
    for (const reading of readings) {
      await this.page.keyboard.type(reading)
      await this.page.keyboard.press('Enter')
    }
    await expect(grid.getByText(`${readings.length} of ${readings.length}`)).toBeVisible()
  }

  override async save(): Promise<void> {
    await this.keys.press(this.page.getByRole('button', { name: 'Save to the record' }))
    await this.page.waitForURL(/\/points\/\d\d\?attempt=\d+$/)
  }
}
