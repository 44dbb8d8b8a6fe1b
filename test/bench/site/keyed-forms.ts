import type { Page } from '@playwright/test'
import type { BenchBrowser } from './bench-browser'
import { type Keystroke, typeTexts, watchedKeys, watchKeys } from './keystroke-times'

const HARDNESS = ['76', '78', '74', '79', '77', '81', '75', '76', '80', '78', '77', '79', '76', '75', '78', '82', '77']
const MARKS = [...HARDNESS, '76', '74', '79']

/** A form of MD-0042 and what is keyed in it. */
export type KeyedForm = { name: string; path: string; key(page: Page): Promise<void> }

/** Forms whose keys are timed: the grid of twenty marks keyed twice over, and forms of single fields. */
export const KEYED_FORMS: readonly KeyedForm[] = [
  {
    name: 'hardness, 20 marks twice over',
    path: '/site#repair=MD-0042&point=16&attempt=3&form=hardness',
    async key(page) {
      await page.getByRole('button', { name: 'Key the marks' }).click()
      await typeTexts(page, MARKS, 'Enter')
      await page.getByRole('button', { name: 'Key the marks' }).click()
      await typeTexts(page, [...MARKS].reverse(), 'Enter')
    },
  },
  fieldsOf('climate', '07', 'climate', ['23.5', '61', '21.4', '14.2']),
  fieldsOf('cleanliness', '05', 'cleanliness', ['2', '190', '205']),
  fieldsOf('resin mix', '14', 'resin-mix', ['600.5', '180.2', '23.5']),
  fieldsOf('pressure test', '18', 'pressure-test', ['1.52', '1.50', '24.5'], 'Add a reading'),
]

function fieldsOf(name: string, point: string, form: string, texts: readonly string[], first?: string): KeyedForm {
  return {
    name,
    path: `/site#repair=MD-0042&point=${point}&attempt=1&form=${form}`,
    async key(page) {
      const fields = page.locator('form.form .with-unit input, form.form input[inputmode=numeric]')
      if (first) await page.getByRole('button', { name: first }).click()
      const count = await fields.count()
      if (count === 0) throw new Error(`${name}: no field to key`)
      for (let at = 0; at < count; at += 1) {
        await fields.nth(at).focus()
        await typeTexts(page, [texts[at % texts.length] ?? ''], null)
      }
    },
  }
}

/** Open a form on a slowed page and time its keys. */
export async function timeForm(browser: BenchBrowser, form: KeyedForm): Promise<Keystroke[]> {
  const { page } = await browser.coldPage()
  try {
    await page.goto(form.path)
    await page.locator('form.form ul.live').waitFor({ timeout: 60_000 })
    await page.waitForTimeout(1000)
    await watchKeys(page)
    await form.key(page)
    return await watchedKeys(page)
  } finally {
    await page.evaluate(() => localStorage.clear())
    await page.close()
  }
}

/** Time keys into a field of the browser's own on an empty page: what no form can be faster than. */
export async function timeBareField(browser: BenchBrowser): Promise<Keystroke[]> {
  const { page } = await browser.coldPage()
  try {
    await page.setContent('<input aria-label="bare">')
    await page.getByLabel('bare').focus()
    await watchKeys(page)
    await typeTexts(page, MARKS, null)
    return await watchedKeys(page)
  } finally {
    await page.close()
  }
}
