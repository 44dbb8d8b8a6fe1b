import { cache } from 'react'
import type { StreamId } from '@/lib/domain/facts/fact'
import { addDays } from '@/lib/domain/fold/calendar'
import { foldInstrument } from '@/lib/domain/fold/fold-instrument'
import { ofKind, ofStream } from '@/lib/domain/fold/order-facts'
import type { InstrumentState } from '@/lib/domain/fold/repair-state'
import { calibratedOn, certificateInForce } from '@/lib/domain/judge/certificate-in-force'
import { showReadingUnit, showUnit } from '@/lib/domain/reading'
import { showDecimal } from '@/lib/domain/decimal'
import { type CalendarDay, dayOf, type Moment } from '@/lib/domain/time'
import { listStreams } from '@/lib/server/store/list-streams'
import { loadStreams } from '@/lib/server/store/load-stream'
import type { ReadingDesk } from './reading-desk'

export type InstrumentStanding = 'quarantined' | 'found wrong' | 'no certificate' | 'overdue' | 'due soon' | 'in force'
export type InstrumentRow = { stream: StreamId; number: string; kind: string; measures: string; certificate: string | null; dueOn: CalendarDay | null; range: string | null; lastCheck: { at: Moment; words: string } | null; standing: InstrumentStanding }

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

const URGENCY: readonly InstrumentStanding[] = ['quarantined', 'found wrong', 'no certificate', 'overdue', 'due soon', 'in force']

/** Every instrument as it stands today, what may not be used first. */
export const loadInstrumentRows = cache(async ({ desk, actor }: ReadingDesk): Promise<InstrumentRow[]> => {
  const streams = (await listStreams(desk.store, actor.tenant, 'instrument')).map((one) => one.stream)
  const { facts } = await loadStreams(desk.store, actor.tenant, streams)
  const today = desk.today(null)
  const rows = streams.flatMap((stream): InstrumentRow[] => {
    const state = foldInstrument(facts, stream, desk.now(null))
    if (!state) return []
    const registered = ofKind(ofStream(facts, stream), 'instrument-registered')[0]
    const shown = certificateInForce(state, today) ?? state.certificates.toSorted((a, b) => a.body.dueOn.localeCompare(b.body.dueOn)).at(-1) ?? null
    const check = state.checks.at(-1)
    return [{
      stream, number: state.number, kind: state.kind, measures: (registered?.body.measures ?? []).map(showUnit).join(', '), certificate: shown?.body.certificate ?? null, dueOn: shown?.body.dueOn ?? null, range: rangeWords(shown),
      lastCheck: check ? { at: check.observedAt, words: `${check.body.result}, ${check.body.coverage}: ${showReadingUnit(check.body.read)} on ${showReadingUnit(check.body.reference)}` } : null, standing: instrumentStanding(state, today),
    }]
  })
  return rows.sort((a, b) => URGENCY.indexOf(a.standing) - URGENCY.indexOf(b.standing) || a.number.localeCompare(b.number))
})
