/** Where nothing is painted, as in a page behind another, the work is done after this. */
const UNPAINTED_MS = 200

/** Work that may be asked for often and is done once after the next paint, so that no key waits for it. `now` does it at once where it still waits, `cancel` leaves it undone. */
export function afterPaint(work: () => void): { ask(): void; now(): void; cancel(): void } {
  let isAsked = false
  const now = () => {
    if (!isAsked) return
    isAsked = false
    work()
  }
  return {
    ask() {
      if (isAsked) return
      isAsked = true
      requestAnimationFrame(() => setTimeout(now, 0))
      setTimeout(now, UNPAINTED_MS)
    },
    now,
    cancel() {
      isAsked = false
    },
  }
}
