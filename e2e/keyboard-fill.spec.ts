import { expect, test } from '@playwright/test'
import { assess, permit } from './steps/assess-and-prepare'
import { setClock } from './steps/clock'
import { fillMix } from './steps/fill-mix'
import { Keyboard } from './steps/keyboard'
import { closeByKeyboard, openRepairByKeyboard, signInByKeyboard } from './steps/keyboard-acts'
import { KeyboardForm } from './steps/keyboard-form'
import { nextAct } from './steps/next-act'
import type { Releases, Signs } from './steps/people'
import { MIXES } from './steps/repair-0042'
import { QI, Walk } from './steps/walk'
import { checkBeforeWrap } from './steps/wrap-and-cure'

const NUMBER = process.env.E2E_KEYBOARD_NUMBER ?? 'MD-0221'
const DAY = '05-18'
const LOGGED = 'time,under the blanket\n2026-05-18 10:00,17.9\n2026-05-18 11:00,17.3\n2026-05-18 12:00,17.1\n'

/** A walk whose forms are filled, signed and released without a pointer. */
class KeyboardWalk extends Walk {
  protected override hand(): KeyboardForm {
    return new KeyboardForm(this.page)
  }

  protected override decide(signs: Signs, releases: Releases): Promise<void> {
    return closeByKeyboard(this.page, signs, releases)
  }
}

test('a repair is opened, and forms of every kind are filled, signed, submitted and released by the keyboard alone', async ({
  page,
}) => {
  const walk = new KeyboardWalk(page, NUMBER, DAY)
  walk.at('07:30')
  await signInByKeyboard(page, QI)
  await openRepairByKeyboard(page, NUMBER)
  // point 01: choices, measured values, a chalk grid, marks keyed one by one, and a sheet of thirty figures
  await assess(walk)
  await permit(walk)

  walk.at('12:30')
  await checkBeforeWrap(walk)
  const mix = await walk.form('14', 'resin-mix')
  const [mixNo, , , a, b] = MIXES[0]
  await fillMix(mix, mixNo, { A: ['RS-884', a], B: ['HB-2291', b] })
  await mix.key('Temperature of the mix', '15.8')
  await mix.stamp('Mixing started')
  await mix.save()

  const cure = await walk.form('15', 'cure')
  const choosing = page.waitForEvent('filechooser')
  await new Keyboard(page).press(page.getByLabel('Logger file'))
  await (await choosing).setFiles({ name: 'cure.csv', mimeType: 'text/csv', buffer: Buffer.from(LOGGED) })
  const keys = new Keyboard(page)
  await keys.choose(page.getByRole('group', { name: 'Which clock did the logger keep?' }), 'the site’s, UTC+01:00')
  await keys.choose(page.getByRole('group', { name: 'In which unit are its temperatures?' }), '°C')
  await keys.pick(page.getByLabel('Place of under the blanket'), '6 o’clock')
  await keys.press(page.getByRole('button', { name: 'Take the temperatures into the form' }))
  await cure.time('Started', DAY, '10:00')
  await cure.stamp('Ended')
  await cure.choose('Post-cure', 'no')
  await cure.choose('Interrupted', 'no')
  await cure.save()
  await expect(page.locator('article.group').filter({ hasText: '17.3' })).toHaveCount(1)
})

test('a nonconformance is raised, contained and assessed by the keyboard alone', async ({ page }) => {
  setClock(DAY, '13:00')
  const keys = new Keyboard(page)
  await signInByKeyboard(page, QI)
  await page.goto(`/nonconformances/new?repair=${NUMBER}&point=13&attempt=1`)
  const number = await page.getByRole('textbox', { name: /^Number/ }).inputValue()
  for (const [label, text] of [
    ['In a few words', 'Dew point margin too small'],
    ['What is not as it should be', 'Steel 2.1 K over the dew point.'],
    ['What is required', 'At least 3 K, clause 6.2'],
  ] as const)
    await keys.type(page.getByRole('textbox', { name: new RegExp(`^${label}`) }), text)
  await keys.pick(page.getByRole('combobox', { name: /^Class of cause/ }), 'method')
  await keys.press(page.getByRole('button', { name: 'Raise it' }))
  await page.waitForURL(`**/nonconformances/${number}`)
  for (const [title, field, text, submit] of [
    ['Contain', 'What was done at once', 'Work stopped, heater set up.', 'Record containment'],
    ['Assess', 'What was found', 'Door of the shaft stood open.', 'Record the assessment'],
  ] as const) {
    const fold = nextAct(page, title)
    if ((await fold.getAttribute('open')) === null) await keys.press(fold.locator('summary').first())
    await keys.type(fold.getByRole('textbox', { name: new RegExp(`^${field}`) }), text)
    await keys.press(fold.getByRole('button', { name: submit, exact: true }))
    await expect(page.getByRole('list', { name: /^Life of/ })).toContainText(text)
  }
})
