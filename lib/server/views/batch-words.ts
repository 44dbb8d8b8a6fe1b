import { parseGs1, showGs1 } from '@/lib/calc/gs1-elements'
import { isRefused } from '@/lib/calc/refusal'
import { type PersonId, type StreamId, streamName } from '@/lib/domain/facts/fact'
import type { BodyOf, Fact } from '@/lib/domain/facts/fact-kinds'
import { addDays } from '@/lib/domain/fold/calendar'
import { orderFacts } from '@/lib/domain/fold/order-facts'
import type { BatchState } from '@/lib/domain/fold/store-states'
import { showReadingUnit } from '@/lib/domain/reading'
import { type CalendarDay, dayOf, showClock } from '@/lib/domain/time'
import { type EventLine, eventLine } from './trace-event-line'

export type BatchStanding = 'recalled' | 'quarantined' | 'expired' | 'expires soon' | 'in date' | 'no expiry stated'

/** Days ahead of the use-by day at which a list says "expires soon". A reminder on screens; it judges nothing. */
const SOON_DAYS = 30

/** How a batch stands on a day. A recall outranks a quarantine, a quarantine the date. */
export function batchStanding(state: BatchState, today: CalendarDay): BatchStanding {
  if (state.recalled && state.isQuarantined) return 'recalled'
  if (state.isQuarantined) return 'quarantined'
  if (state.expiresOn === null) return 'no expiry stated'
  if (state.expiresOn < today) return 'expired'
  return state.expiresOn <= addDays(today, SOON_DAYS) ? 'expires soon' : 'in date'
}

/** Everything in a batch's stream as lines, in the order it happened. */
export function batchEvents(
  facts: readonly Fact[],
  stream: StreamId,
  names: Record<PersonId, string>,
  asOf: string,
): EventLine[] {
  return orderFacts(facts, asOf)
    .filter((fact) => fact.stream === stream)
    .flatMap((fact) => {
      const words = wordsOf(fact)
      return words ? [eventLine(fact, names, words[0], words[1])] : []
    })
}

function wordsOf(fact: Fact): [string, string] | null {
  switch (fact.kind) {
    case 'batch-received':
      return ['Received', fact.body.quantity ? showReadingUnit(fact.body.quantity) : 'amount not stated']
    case 'batch-opened':
      return ['Opened', `${dayOf(fact.body.openedAt)} ${showClock(fact.body.openedAt)}`]
    case 'batch-issued':
      return ['Issued', `${showReadingUnit(fact.body.quantity)} to ${streamName(fact.body.to)}`]
    case 'batch-returned':
      return ['Returned', `${showReadingUnit(fact.body.quantity)} from ${streamName(fact.body.from)}`]
    case 'batch-wasted':
      return [
        'Wasted',
        `${showReadingUnit(fact.body.quantity)}: ${fact.body.reason}${fact.body.repair ? ` (${streamName(fact.body.repair)})` : ''}`,
      ]
    case 'batch-counted':
      return ['Counted in the store', showReadingUnit(fact.body.quantity)]
    case 'batch-refused':
      return ['Refused', `${fact.body.reason}${fact.body.repair ? ` (${streamName(fact.body.repair)})` : ''}`]
    case 'batch-quarantined':
      return ['Quarantined', fact.body.reason]
    case 'quarantine-lifted':
      return ['Quarantine lifted', `${fact.body.reason}; with ${fact.body.second}`]
    case 'batch-recalled':
      return [
        'Recalled',
        `${fact.body.reason}; by ${fact.body.by}${fact.body.reference ? `, ${fact.body.reference}` : ''}`,
      ]
    case 'maker-letter':
      return ['Maker’s letter', `${fact.body.letter}: use by ${fact.body.expiresOn}`]
    case 'owner-notified':
      return [
        'Owner notified',
        `${fact.body.to}, ${fact.body.how}${fact.body.repair ? ` (${streamName(fact.body.repair)})` : ''}`,
      ]
    default:
      return null
  }
}

/** The label's text as a person reads it: GS1 fields with brackets, any other text as it is; null when none was kept. */
export function labelTextOf({ label }: BodyOf<'batch-received'>): string | null {
  if (label === undefined) return null
  const answer = parseGs1({ text: label, referenceYear: 2000, identifiers: 'label' })
  return isRefused(answer) ? label : showGs1(answer.elements)
}

const READ_BY = {
  camera: 'scanned with the camera',
  'image file': 'read from a picture',
  keyed: 'label text keyed',
} as const

/** How the label came in: typed; or how it was read, and “completed by hand” when its text lacks the batch or its use-by day. */
export function labelReadOf(body: BodyOf<'batch-received'>): string {
  if (!body.label) return 'typed'
  const read = body.labelBy === undefined ? 'scanned' : READ_BY[body.labelBy]
  const answer = parseGs1({ text: body.label, referenceYear: 2000, identifiers: 'label' })
  if (isRefused(answer))
    return body.labelBy === undefined ? 'label text kept, completed by hand' : `${read}, completed by hand`
  const isWhole =
    answer.elements['10'] !== undefined && (answer.elements['17'] !== undefined || body.expiresOn === null)
  return isWhole ? read : `${read}, completed by hand`
}
