/** An expected outcome as a plain value: it crosses a server action, a worker and IndexedDB unchanged. */
export type Result<T, E extends { code: string }> = { ok: true; value: T } | { ok: false; error: E }

/** Wrap a value that was obtained. */
export function done<T>(value: T): { ok: true; value: T } {
  return { ok: true, value }
}

/** Wrap an expected refusal. */
export function refused<E extends { code: string }>(error: E): { ok: false; error: E } {
  return { ok: false, error }
}
