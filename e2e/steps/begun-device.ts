import { type Browser, type BrowserContext, expect, type Page } from '@playwright/test'
import { NUMBER, takeAlong } from './begun-point'
import { deviceOptions } from './device-options'
import type { KeptServer } from './kept-server'
import { signInAs } from './people'

export type Device = { context: BrowserContext; page: Page }

/** A device of its own with a repair on it, the begun one unless it is named, where a person is signed in. */
export async function openDevice(
  browser: Browser,
  { url }: KeptServer,
  person: string,
  number = NUMBER,
): Promise<Device> {
  const context = await browser.newContext(deviceOptions(url))
  const page = await context.newPage()
  await signInAs(page, person)
  await takeAlong(page, number)
  return { context, page }
}

/** The network is there again, and all that waited on the device was received. */
export async function comeBack({ context, page }: Device): Promise<void> {
  await context.setOffline(false)
  await expect(page.locator('.outbox-line')).toHaveCount(0, { timeout: 60_000 })
}
