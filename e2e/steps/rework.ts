import { expect } from '@playwright/test'
import { nextAct } from './next-act'
import { signInAs } from './people'
import { HARDNESS_FIRST, HARDNESS_SECOND } from './repair-0042'
import { L1, QI, QJ, type Walk } from './walk'

/** Point 16 once: the full grid, with the live verdict read before it is saved. */
export async function testHardness(
  walk: Walk,
  attempt: number,
  readings: readonly string[],
  verdict: 'Fail' | 'Pass',
  lowest: string,
  mean: string,
): Promise<void> {
  const form = await walk.form('16', 'hardness', attempt)
  await form.stamp('Started')
  await form.choose('Scale', 'Shore D')
  await form.pick('Durometer', 'HD-03')
  await form.marks('Hardness at the marks', readings)
  const live = walk.page.getByRole('list', { name: 'Criteria so far' })
  await expect(live.getByRole('listitem').filter({ hasText: 'each mark' })).toContainText(verdict)
  await expect(live.getByRole('listitem').filter({ hasText: 'Laminate hardness, mean' })).toContainText(mean)
  await expect(form.scope.locator('.tally')).toContainText(`lowest${lowest} at`)
  await form.save()
}

/** First hardness fails; the release is refused; a nonconformance goes its whole way with a rework that passes. */
export async function failReworkAndClose(walk: Walk): Promise<void> {
  const { page } = walk
  walk.at('08:10', '05-20')
  await testHardness(walk, 1, HARDNESS_FIRST, 'Fail', '63', '71.50')
  await page.goto(`/nonconformances/new?repair=${walk.number}&point=16&attempt=1`)
  const number = await page.getByRole('textbox', { name: /^Number/ }).inputValue()
  await page.getByRole('textbox', { name: /^In a few words/ }).fill('Laminate hardness low at 6 o’clock')
  await page
    .getByRole('textbox', { name: /^What is not as it should be/ })
    .fill('Twelve marks under 74 and the mean under 77.')
  await page.getByRole('textbox', { name: /^What is required/ }).fill('QP-MD-12 rev 3, clauses 11.1 and 11.2')
  await page.getByRole('combobox', { name: /^Class of cause/ }).selectOption('method')
  await page.getByRole('button', { name: 'Raise it' }).click()
  await page.waitForURL(`**/nonconformances/${number}`)
  walk.at('09:00', '05-20')
  await actOn(walk, 'Contain', [['What was done at once', 'Pressure held at 0.40 MPa or less.']], 'Record containment')
  await actOn(walk, 'Assess', [['What was found', 'Cold water in the pipe at 6 o’clock.']], 'Record the assessment')
  await propose(walk, 'rework', 'Post-cure with a blanket, then the full grid again.')
  await actOn(walk, 'Approve for the inspector', [], 'Approve the disposition')
  await signInAs(page, L1)
  await page.goto(`/nonconformances/${number}`)
  await actOn(walk, 'Start the action', [['What is being done', 'Blanket on.']], 'Record the start')
  walk.at('22:00', '05-20')
  await actOn(walk, 'Action done', [['What was done', 'Post-cured for 8 h at 45 °C.']], 'Record that it is done')
  await signInAs(page, QI)
  walk.at('08:20', '05-21')
  await walk.open('16')
  await page.getByText('Open attempt 2', { exact: true }).first().click()
  await page.getByLabel('From nonconformance').selectOption({ label: number })
  await page.getByLabel('Reason of the new attempt').fill('Full grid again after post-cure.')
  await page.getByRole('button', { name: 'Open attempt 2' }).click()
  await expect(page.getByRole('link', { name: /^Attempt 2/ })).toBeVisible()
  walk.at('08:30', '05-21')
  await testHardness(walk, 2, HARDNESS_SECOND, 'Pass', '76', '78.40')
  await walk.close(
    '16',
    [[QI, 'measured']],
    [
      [L1, 'crew'],
      [QI, 'inspector'],
    ],
    2,
  )
  await signInAs(page, QJ)
  walk.at('09:10', '05-21')
  await page.goto(`/nonconformances/${number}`)
  await actOn(
    walk,
    'Verify',
    [['How it was verified, on what evidence', 'Attempt 2: twenty marks, lowest 76, mean 78.40.']],
    'Verify',
  )
  await actOn(walk, 'Close', [], 'Close')
  await expect(page.getByRole('list', { name: 'Progress' }).locator('[aria-current=step]')).toHaveText('closed')
}

async function propose(walk: Walk, disposition: string, what: string): Promise<void> {
  const acts = walk.page.getByRole('region', { name: 'Next acts' })
  await openFold(walk, 'Propose a disposition')
  await acts.getByRole('combobox', { name: /^Disposition/ }).selectOption(disposition)
  await acts
    .getByRole('textbox', { name: /^What shall be done/ })
    .first()
    .fill(what)
  await acts.getByRole('button', { name: 'Propose', exact: true }).click()
  await expect(walk.page.getByRole('heading', { name: `Disposition: ${disposition}` })).toBeVisible()
}

/** One act of the life cycle: its fold opened, its fields filled, its button pressed, and its words in the life of the nonconformance. */
async function actOn(
  walk: Walk,
  title: string,
  fields: readonly (readonly [string, string])[],
  submit: string,
): Promise<void> {
  const fold = await openFold(walk, title)
  for (const [label, text] of fields) await fold.getByRole('textbox', { name: new RegExp(`^${label}`) }).fill(text)
  await fold.getByRole('button', { name: submit, exact: true }).click()
  const words = fields[0]?.[1]
  if (words) await expect(walk.page.getByRole('list', { name: /^Life of/ })).toContainText(words)
  else await expect(fold).toHaveCount(0)
}

async function openFold(walk: Walk, title: string) {
  const fold = nextAct(walk.page, title)
  await expect(fold).toBeVisible()
  if ((await fold.getAttribute('open')) === null) await fold.locator('summary').first().click()
  return fold
}
