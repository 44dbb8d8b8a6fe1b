import { expect, type Page } from '@playwright/test'

/** The shell of the screens on site and its program lie on the device. */
export async function waitForShell(page: Page): Promise<void> {
  await expect
    .poll(
      () =>
        page.evaluate(async () => {
          const worker = await navigator.serviceWorker.getRegistration()
          return (
            worker?.active?.state === 'activated' && (await caches.match('/site', { ignoreSearch: true })) !== undefined
          )
        }),
      { timeout: 60_000 },
    )
    .toBe(true)
}
