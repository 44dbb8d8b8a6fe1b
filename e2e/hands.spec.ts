import { expect, type Page, test } from '@playwright/test'
import { DEMO_URL } from './places'
import { signInAs } from './steps/people'
import { QI } from './steps/walk'

test.use({ baseURL: DEMO_URL })

/** Least side of a key on a phone, in CSS pixels. */
const KEY_PX = 56

type Felt = { shakes: unknown[]; locks: string[] }

/** A device that tells what its hand felt, and whether its screen was asked to stay on. */
async function feelDevice(page: Page): Promise<() => Promise<Felt>> {
  await page.addInitScript(() => {
    const felt: Felt = { shakes: [], locks: [] }
    Object.assign(window, { felt })
    navigator.vibrate = (pattern) => felt.shakes.push(pattern) > 0
    const request = async (kind: string) => {
      felt.locks.push(kind)
      return Object.assign(new EventTarget(), { release: async () => undefined })
    }
    Object.defineProperty(navigator, 'wakeLock', { value: { request } })
  })
  return () => page.evaluate(() => (window as unknown as { felt: Felt }).felt)
}

test('marks are keyed with one thumb: each key is felt, undo takes back the jump too, the value taken last is read back', async ({
  page,
}) => {
  const felt = await feelDevice(page)
  await signInAs(page, QI)
  await page.goto('/repairs/MD-0043/points/16/record/hardness?attempt=1')
  const grid = page.locator('fieldset[data-marks]')
  await grid.getByRole('button', { name: 'Key the marks' }).tap()
  const pad = grid.getByRole('group', { name: 'Keys' })
  const tap = async (...keys: string[]) => {
    for (const key of keys) await pad.getByRole('button', { name: key, exact: true }).tap()
  }
  const current = grid.locator('[aria-current=true]')
  for (const key of await pad.getByRole('button').all()) {
    const box = await key.boundingBox()
    expect(Math.min(box?.width ?? 0, box?.height ?? 0), await key.textContent().then(String)).toBeGreaterThanOrEqual(
      KEY_PX,
    )
  }
  await tap('7', '5', 'Next mark')
  await expect(grid.getByRole('status')).toContainText(/Taken, A-12\s*75 Shore D/)
  const second = await current.getAttribute('aria-label')
  expect(second).not.toMatch(/^A-12/)
  await expect(current).toBeInViewport({ ratio: 1 })
  expect((await felt()).shakes.length).toBe(3)
  await tap('Undo the last key')
  await expect(current).toHaveAccessibleName(/^A-12: 75/)
  await tap('Undo the last key')
  // half a number is kept and not judged: it would fail by chance
  await expect(current).toHaveAccessibleName('A-12: 7')
  await tap('Point', '5', 'Point')
  const { shakes } = await felt()
  expect(shakes.at(-2)).not.toEqual(shakes.at(-1))
  await tap('Next mark', 'Mark before')
  await expect(current).toHaveAccessibleName('A-12: 7.5, outside the limit')
  await tap('Value is special')
  await page.getByRole('dialog').getByRole('button', { name: 'No access' }).tap()
  await expect(grid.getByRole('button', { name: /^A-12: NA/ })).toBeVisible()
  await tap('Undo the last key')
  await expect(current).toHaveAccessibleName(/^A-12: 7\.5/)
})

test('numbers are keyed with our own keys, below zero too; the screen stays on while a timer runs; settings stay on the device', async ({
  page,
}) => {
  const felt = await feelDevice(page)
  await signInAs(page, QI)
  await page.goto('/repairs/MD-0043/points/14/record/resin-mix?attempt=1')
  const field = page.getByRole('textbox', { name: /^Temperature of the mix/ })
  await field.tap()
  await expect(field).toHaveAttribute('inputmode', 'none')
  const dock = page.getByRole('region', { name: 'Keys for Temperature of the mix' })
  for (const key of ['1', 'Below zero', '5', 'Undo the last key', 'Below zero', '5', 'Point', '8'])
    await dock.getByRole('button', { name: key, exact: true }).tap()
  await expect(field).toHaveValue('15.8')
  await dock.getByRole('button', { name: 'Next field' }).tap()
  await expect(page.getByRole('textbox', { name: /^Spare/ })).toBeFocused()
  await expect(page.locator('.key-dock').getByRole('status')).toContainText('15.8 °C')
  await page.locator('.key-dock').getByRole('button', { name: 'Close the keys' }).tap()
  await expect(page.locator('.key-dock')).toHaveCount(0)
  await page.getByRole('button', { name: 'Stamp now: Mixing started' }).tap()
  await expect(page.getByRole('timer', { name: 'Working time left' })).toBeVisible()
  await expect.poll(async () => (await felt()).locks).toEqual(['screen'])

  await page.getByText('Menu', { exact: true }).tap()
  await page.getByRole('button', { name: 'Screen and keys' }).tap()
  const panel = page.getByRole('dialog', { name: 'Screen and keys' })
  await panel.getByRole('group', { name: 'Screen' }).getByText('night', { exact: true }).tap()
  for (const name of ['Shake at each key', 'Read back large'])
    await panel.getByRole('group', { name }).getByText('off', { exact: true }).tap()
  await panel.getByRole('button', { name: 'Done' }).tap()
  await page.reload()
  await expect(page.locator('html')).toHaveAttribute('data-theme', 'night')
  await field.tap()
  await dock.getByRole('button', { name: '1', exact: true }).tap()
  await expect(field).toHaveValue('15.81')
  await expect(dock.getByRole('status')).toHaveCount(0)
  expect((await felt()).shakes).toEqual([])
  await page.getByText('Menu', { exact: true }).tap()
  await page.getByRole('button', { name: 'Screen and keys' }).tap()
  await panel.getByRole('group', { name: 'Large keys for numbers' }).getByText('off', { exact: true }).tap()
  await panel.getByRole('button', { name: 'Done' }).tap()
  await field.tap()
  await expect(field).toHaveAttribute('inputmode', 'decimal')
  await expect(page.locator('.key-dock')).toHaveCount(0)
})
