import { type BrowserContext, type BrowserContextOptions, chromium, type Page, test } from '@playwright/test'
import { deviceOptions } from './device-options'

/** A browser with its own profile on disk: closed and opened again it keeps what it kept, its keys too. */
export async function openKeptBrowser(
  profile: string,
  baseURL: string,
  more: Pick<BrowserContextOptions, 'offline' | 'acceptDownloads'> = {},
  args: readonly string[] = [],
): Promise<{ context: BrowserContext; page: Page }> {
  const { launchOptions } = test.info().project.use
  const context = await chromium.launchPersistentContext(profile, {
    ...launchOptions,
    args: [...(launchOptions?.args ?? []), ...args],
    ...deviceOptions(baseURL),
    ...more,
  })
  return { context, page: context.pages()[0] ?? (await context.newPage()) }
}
