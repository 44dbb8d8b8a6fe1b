import type { Page } from '@playwright/test'

/** One key: to the paint that follows it, as the browser itself tells it to 8 ms, null where that took less than 16; and whether it changed the verdicts, and did so before that paint. */
export type Keystroke = { key: string; paintMs: number | null; verdict: 'same' | 'in this paint' | 'later' }
type Watched = Keystroke & { at: number; isFramed: boolean }

const GAP_MS = 160

/** Note from now on, in the page, what each key does to the list of verdicts. What watches does nothing but set a mark: it is counted to the key. */
export async function watchKeys(page: Page): Promise<void> {
  await page.evaluate(() => {
    const keys: Watched[] = []
    Object.assign(window, { watchedKeys: keys })
    addEventListener(
      'keydown',
      ({ key, timeStamp }) => {
        const one: Watched = { key, at: timeStamp, paintMs: null, verdict: 'same', isFramed: false }
        keys.push(one)
        requestAnimationFrame(() => {
          one.isFramed = true
        })
      },
      { capture: true },
    )
    const verdicts = document.querySelector('ul.live')
    const told = new MutationObserver(() => {
      const latest = keys.at(-1)
      if (latest?.verdict === 'same') latest.verdict = latest.isFramed ? 'later' : 'in this paint'
    })
    if (verdicts) told.observe(verdicts, { childList: true, characterData: true, subtree: true })
    new PerformanceObserver((list) => {
      for (const { name, startTime, duration } of list.getEntries()) {
        const key = name === 'keydown' ? keys.find((one) => one.at === startTime) : undefined
        if (key) key.paintMs = duration
      }
    }).observe({ type: 'event', durationThreshold: 16 } as PerformanceObserverInit)
  })
}

/** Type texts as a person does, one key after the other, with `after` pressed after each. */
export async function typeTexts(page: Page, texts: readonly string[], after: string | null): Promise<void> {
  for (const text of texts)
    for (const key of [...text, ...(after ? [after] : [])]) {
      await page.keyboard.press(key)
      await page.waitForTimeout(GAP_MS)
    }
}

/** What the keys did since `watchKeys`. */
export async function watchedKeys(page: Page): Promise<Keystroke[]> {
  await page.waitForTimeout(500)
  return page.evaluate(() =>
    (window as unknown as { watchedKeys: Keystroke[] }).watchedKeys.map(({ key, paintMs, verdict }) => ({
      key,
      paintMs,
      verdict,
    })),
  )
}
