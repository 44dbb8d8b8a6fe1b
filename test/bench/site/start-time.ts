import type { BenchBrowser } from './bench-browser'

/** Milliseconds from the start of the navigation to the paint after each named part was there, and as `words` to the first words that the browser painted. */
export type StartTimes = Record<string, number>

/** Open an address on a cold page and time when parts of the screen, named with their selectors, were first painted. @throws Error when one does not come */
export async function startTimes(
  browser: BenchBrowser,
  path: string,
  parts: Readonly<Record<string, string>>,
): Promise<StartTimes> {
  const { page } = await browser.coldPage()
  try {
    await page.addInitScript((wanted) => {
      const seen: Record<string, number> = {}
      const asked = new Set<string>()
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
              console.debug(`seen ${JSON.stringify({ ...seen, words: words?.startTime })}`)
            }
            port2.postMessage(null)
          })
        }
      }
      new MutationObserver(look).observe(document, { childList: true, subtree: true })
    }, parts)
    // Told by the page itself: a question put to it while it starts would load the asker's own program into it first.
    const told = page.waitForEvent('console', { predicate: (one) => one.text().startsWith('seen '), timeout: 60_000 })
    await page.goto(path, { waitUntil: 'commit' })
    return JSON.parse((await told).text().slice('seen '.length))
  } finally {
    await page.close()
  }
}
