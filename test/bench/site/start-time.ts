import type { BareBrowser } from './bare-browser'

/** Milliseconds from the start of the navigation to the paint after each named part was there, and as `words` to the first words that the browser painted. */
export type StartTimes = Record<string, number>

const ASKED_EVERY_MS = 1000
const ASKED_TIMES = 60
/** A page that a person leaves open has a rested browser behind it. */
const REST_MS = 1000
/** No start is looked at while it goes on. */
const FIRST_ASKED_MS = 3000

/**
 * Open an address on a cold page and time when parts of the screen, named with their selectors, were first painted. The page notes it by itself and is asked long after.
 * @param traced takes what the browser did meanwhile, in its own trace format
 * @throws Error when a part does not come
 */
export async function startTimes(
  browser: BareBrowser,
  address: string,
  parts: Readonly<Record<string, string>>,
  traced?: (events: unknown[]) => void,
): Promise<StartTimes> {
  const page = await browser.coldPage()
  try {
    await page.runFirst(`(${watch})(${JSON.stringify(parts)})`)
    await rest(REST_MS)
    const stop = traced ? await page.trace() : null
    await page.goto(address)
    await rest(FIRST_ASKED_MS)
    if (stop) traced?.(await stop())
    for (let asked = 0; asked < ASKED_TIMES; asked += 1) {
      const seen = await page.read('globalThis.seenParts')
      if (typeof seen === 'string') return JSON.parse(seen)
      await rest(ASKED_EVERY_MS)
    }
    throw new Error(`${address} did not show ${Object.values(parts).join(', ')}`)
  } finally {
    await page.close()
  }
}

/** Runs in the page, before its own scripts. */
const watch = `(wanted) => {
  const seen = {}
  const asked = new Set()
  const look = () => {
    for (const [name, selector] of Object.entries(wanted)) {
      if (asked.has(name) || !document.querySelector(selector)) continue
      asked.add(name)
      // the frame that shows it is done when the first task after it runs
      requestAnimationFrame(() => {
        const { port1, port2 } = new MessageChannel()
        port1.onmessage = () => {
          seen[name] = performance.now()
          if (Object.keys(seen).length < Object.keys(wanted).length) return
          const [words] = performance.getEntriesByName('first-contentful-paint')
          globalThis.seenParts = JSON.stringify({ ...seen, words: words?.startTime })
        }
        port2.postMessage(null)
      })
    }
  }
  new MutationObserver(look).observe(document, { childList: true, subtree: true })
}`

function rest(ms: number): Promise<void> {
  return new Promise((settle) => setTimeout(settle, ms))
}
