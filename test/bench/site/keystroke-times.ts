import type { Page } from '@playwright/test'

/**
 * One key: to the first task of the page after the paint of the verdict that it changed, or null where it changed none; to the next paint, as the browser itself tells it to 8 ms; and whether that
 * paint showed the changed verdict.
 */
export type Keystroke = { key: string; verdictMs: number | null; paintMs: number | null; isVerdictInPaint: boolean }
type Watched = Keystroke & { at: number; said: string; isFramed: boolean }

const GAP_MS = 160

/** Note from now on, in the page, what each key does to the list of verdicts. */
export async function watchKeys(page: Page): Promise<void> {
  await page.evaluate(() => {
    const keys: Watched[] = []
    Object.assign(window, { watchedKeys: keys })
    const verdicts = () => document.querySelector('ul.live')?.textContent ?? ''
    addEventListener(
      'keydown',
      ({ key, timeStamp }) => {
        const watched = { key, at: timeStamp, verdictMs: null, paintMs: null, isVerdictInPaint: false, isFramed: false }
        const one: Watched = { ...watched, said: verdicts() }
        keys.push(one)
        requestAnimationFrame(() => {
          one.isFramed = true
        })
      },
      { capture: true },
    )
    new MutationObserver(() => {
      const latest = keys.at(-1)
      if (!latest || latest.verdictMs !== null || verdicts() === latest.said) return
      latest.verdictMs = -1
      latest.isVerdictInPaint = !latest.isFramed
      requestAnimationFrame(() => {
        const { port1, port2 } = new MessageChannel()
        port1.onmessage = () => {
          latest.verdictMs = performance.now() - latest.at
        }
        port2.postMessage(null)
      })
    }).observe(document.body, { childList: true, characterData: true, subtree: true })
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
    (window as unknown as { watchedKeys: Keystroke[] }).watchedKeys.map(
      ({ key, verdictMs, paintMs, isVerdictInPaint }) => ({
        key,
        verdictMs,
        paintMs,
        isVerdictInPaint,
      }),
    ),
  )
}
