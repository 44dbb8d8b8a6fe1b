import type { BenchBrowser } from './bench-browser'

/** Scripts that a route brings without anything in a cache, in bytes as they came over the wire. */
export type FirstLoad = {
  path: string
  /** Named in the page itself. */
  namedBytes: number
  /** All until the screen was usable and the network quiet, with what it asked for by itself. */
  allBytes: number
  chunks: { name: string; bytes: number; isNamed: boolean }[]
}

/** Load a route past every cache and the service worker until a part of its screen is there, and weigh its scripts. @throws Error when the route does not answer or the part does not come */
export async function firstLoad(browser: BenchBrowser, path: string, usable: string): Promise<FirstLoad> {
  const { page, wire } = await browser.coldPage(1)
  try {
    await wire.send('Network.enable')
    await wire.send('Network.setCacheDisabled', { cacheDisabled: true })
    await wire.send('Network.setBypassServiceWorker', { bypass: true })
    const names = new Map<string, string>()
    const chunks: FirstLoad['chunks'] = []
    wire.on('Network.responseReceived', ({ requestId, response }) => {
      if (/\.js$/.test(new URL(response.url).pathname)) names.set(requestId, new URL(response.url).pathname)
    })
    wire.on('Network.loadingFinished', ({ requestId, encodedDataLength }) => {
      const name = names.get(requestId)
      if (name) chunks.push({ name, bytes: encodedDataLength, isNamed: false })
    })
    const answer = await page.goto(path)
    if (!answer?.ok()) throw new Error(`${path} answered ${answer?.status()}`)
    await page.locator(usable).first().waitFor({ timeout: 60_000 })
    await page.waitForLoadState('networkidle')
    const document = await answer.text()
    for (const chunk of chunks) chunk.isNamed = document.includes(`<script src="${chunk.name}"`)
    const sum = (some: FirstLoad['chunks']) => some.reduce((bytes, one) => bytes + one.bytes, 0)
    return {
      path,
      namedBytes: sum(chunks.filter((one) => one.isNamed)),
      allBytes: sum(chunks),
      chunks: chunks.sort((a, b) => b.bytes - a.bytes),
    }
  } finally {
    await page.close()
  }
}
