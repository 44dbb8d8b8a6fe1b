import { holdsBack } from '@/lib/domain/outbox/exchange'
import { isOpen, type OutboxEntry } from './outbox-entry'

/**
 * What is not on the server yet. `open` counts all of it; `refused` waits for a person, `held` waits behind a refused one of its stream; `oldestAt` is when the oldest was captured, in milliseconds by the device's
 * clock. What was set aside is counted apart: a person dealt with it.
 */
export type OutboxCount = {
  open: number
  waiting: number
  refused: number
  held: number
  photos: number
  oldestAt: number | null
  setAside: number
}

/** Count a person's entries, given in order of sending. */
export function countEntries(entries: readonly OutboxEntry[]): OutboxCount {
  const open = entries.filter(isOpen)
  const refused: OutboxEntry[] = []
  let held = 0
  for (const entry of open) {
    if (entry.state === 'refused') refused.push(entry)
    else if (refused.some((one) => one.input.stream === entry.input.stream && holdsBack(one.command, entry.command)))
      held += 1
  }
  return {
    open: open.length,
    waiting: open.length - refused.length,
    refused: refused.length,
    held,
    photos: new Set(open.flatMap((one) => one.photos)).size,
    oldestAt: open.length === 0 ? null : Math.min(...open.map((one) => one.capturedAt)),
    setAside: entries.filter((one) => one.state === 'set aside').length,
  }
}
