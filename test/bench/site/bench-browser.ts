import { type BrowserContext, type CDPSession, chromium, type Page } from '@playwright/test'

/** How much slower than this machine the measured device is. */
export const SLOWDOWN = 4

/** A browser with a profile on disk, as a phone keeps one. */
export type BenchBrowser = {
  context: BrowserContext
  /** A fresh page on a slowed processor; the service worker sleeps until it is asked. */
  coldPage(slowdown?: number): Promise<{ page: Page; wire: CDPSession }>
  close(): Promise<void>
}

/** Open a browser of a phone's size over a profile that no other browser holds. */
export async function openBenchBrowser(baseURL: string, profile: string): Promise<BenchBrowser> {
  const context = await chromium.launchPersistentContext(profile, {
    executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium',
    args: ['--no-sandbox', '--disable-background-networking', '--disable-quic'],
    viewport: { width: 390, height: 844 },
    hasTouch: true,
    locale: 'en-GB',
    timezoneId: 'Europe/London',
    baseURL,
  })
  // the loader of these scripts names its functions by this; a page knows nothing of it
  await context.addInitScript({ content: 'globalThis.__name ??= (named) => named' })
  return {
    context,
    async coldPage(slowdown = SLOWDOWN) {
      const page = await context.newPage()
      const wire = await context.newCDPSession(page)
      await wire.send('ServiceWorker.enable')
      await wire.send('ServiceWorker.stopAllWorkers')
      await wire.send('ServiceWorker.disable')
      await wire.send('Emulation.setCPUThrottlingRate', { rate: slowdown })
      return { page, wire }
    },
    close: () => context.close(),
  }
}
