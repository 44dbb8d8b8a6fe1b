import type { StreamId } from '../facts/fact'
import type { Fact } from '../facts/fact-kinds'
import { type CalendarDay, dayOf, type Moment } from '../time'
import { addDays } from './calendar'
import { ofKind, ofStream, orderFacts } from './order-facts'
import { isStanding, quarantinesOf } from './quarantines'
import type { BatchState } from './store-states'

/**
 * A batch as its stream tells at `asOf`, or null when it was never received. Use-by is the label's day or the maker's letter's, and the opened
 * life where that ends earlier. A quarantine stands until it is lifted; a recall quarantines too.
 */
export function foldBatch(facts: readonly Fact[], stream: StreamId, asOf: Moment): BatchState | null {
  const own = ofStream(orderFacts(facts, asOf), stream)
  const received = ofKind(own, 'batch-received')[0]
  if (!received) return null
  const recalled = ofKind(own, 'batch-recalled').at(-1) ?? null
  const quarantines = quarantinesOf(own)
  const letter = ofKind(own, 'maker-letter').at(-1)
  const opened = ofKind(own, 'batch-opened')[0]
  const openedUntil =
    opened && received.body.openedLifeDays ? addDays(dayOf(opened.body.openedAt), received.body.openedLifeDays) : null
  return {
    stream,
    number: received.body.number,
    received: received.body,
    expiresOn: earlier(letter?.body.expiresOn ?? received.body.expiresOn, openedUntil),
    isQuarantined: isStanding(quarantines),
    quarantines,
    recalled,
  }
}

function earlier(a: CalendarDay | null, b: CalendarDay | null): CalendarDay | null {
  return a === null || b === null ? (a ?? b) : a < b ? a : b
}
