const KEY = 'underwrap-clock-ahead'

/** Keep how far the clock that counts is ahead of the device's own, for when there is no network: of a demonstration or test alone, in real use the device's own clock counts. */
export function keepClockAhead(storage: Storage, aheadMs: number): void {
  try {
    storage.setItem(KEY, String(Math.round(aheadMs)))
  } catch (cause) {
    if (!(cause instanceof DOMException)) throw cause
  }
}

/** How far the clock that counts was ahead at the last contact, in milliseconds; null when it was never told. */
export function clockAheadOf(storage: Storage): number | null {
  const text = storage.getItem(KEY)
  const aheadMs = text === null ? Number.NaN : Number(text)
  return Number.isFinite(aheadMs) ? aheadMs : null
}

/** Forget it: the device's own clock counts. */
export function forgetClockAhead(storage: Storage): void {
  storage.removeItem(KEY)
}
