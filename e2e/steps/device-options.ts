import { test } from '@playwright/test'

/** How a browser context of a device of its own is made, at an address: as the project's tests have theirs. */
export function deviceOptions(baseURL: string) {
  const { viewport, hasTouch, locale, timezoneId } = test.info().project.use
  return {
    viewport: viewport ?? null,
    hasTouch: hasTouch ?? true,
    locale: locale ?? 'en-GB',
    timezoneId: timezoneId ?? 'Europe/London',
    baseURL,
  }
}
