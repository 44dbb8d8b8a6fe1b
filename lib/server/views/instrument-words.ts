import { showDecimal } from '@/lib/domain/decimal'
import type { PersonId, StreamId } from '@/lib/domain/facts/fact'
import type { Fact } from '@/lib/domain/facts/fact-kinds'
import { addDays } from '@/lib/domain/fold/calendar'
import { orderFacts } from '@/lib/domain/fold/order-facts'
import type { InstrumentState } from '@/lib/domain/fold/store-states'
import { calibratedOn, certificateInForce } from '@/lib/domain/judge/certificate-in-force'
import { showReadingUnit, showUnit } from '@/lib/domain/reading'
import { type CalendarDay, dayOf } from '@/lib/domain/time'
import { type EventLine, eventLine } from './trace-event-line'

export type InstrumentStanding = 'quarantined' | 'found wrong' | 'no certificate' | 'overdue' | 'due soon' | 'in force'

/** Days ahead of the due day at which a list says "due soon". A reminder on screens; it judges nothing. */
const SOON_DAYS = 30

/** How an instrument stands on a day. Found wrong outranks its certificate until a later one is recorded. */
export function instrumentStanding(state: InstrumentState, today: CalendarDay): InstrumentStanding {
  if (state.isQuarantined) return 'quarantined'
  const wrong = state.foundWrong.at(-1)
  if (wrong && !state.certificates.some((one) => calibratedOn(one) > dayOf(wrong.observedAt))) return 'found wrong'
  if (state.certificates.length === 0) return 'no certificate'
  const inForce = certificateInForce(state, today)
  if (!inForce) return 'overdue'
  return inForce.body.dueOn <= addDays(today, SOON_DAYS) ? 'due soon' : 'in force'
}

/** Range of a certificate in words; null when it states none. */
export function rangeWords(certificate: InstrumentState['certificates'][number] | null): string | null {
  const range = certificate?.body.range
  return range ? `${showDecimal(range.min)} to ${showDecimal(range.max)} ${showUnit(range.unit)}` : null
}

/** Everything in an instrument's stream as lines, in the order it happened. */
export function instrumentEvents(
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
    case 'instrument-registered':
      return ['Registered', fact.body.kind]
    case 'certificate-recorded':
      return ['Certificate recorded', `${fact.body.certificate}, to ${fact.body.dueOn}`]
    case 'check-made':
      return [
        `Check ${fact.body.result} tolerance`,
        `${fact.body.coverage}: read ${showReadingUnit(fact.body.read)} on ${showReadingUnit(fact.body.reference)}, tolerance ${showReadingUnit(fact.body.tolerance)}`,
      ]
    case 'found-wrong':
      return [
        'Found wrong',
        `${fact.body.how}${fact.body.error ? `; error ${showReadingUnit(fact.body.error)}` : '; error not known'}`,
      ]
    case 'instrument-quarantined':
      return ['Quarantined', fact.body.reason]
    case 'quarantine-lifted':
      return ['Quarantine lifted', `${fact.body.reason}; with ${fact.body.second}`]
    default:
      return null
  }
}
