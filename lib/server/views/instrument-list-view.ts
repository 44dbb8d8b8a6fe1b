import { cache } from 'react'
import type { StreamId } from '@/lib/domain/facts/fact'
import { foldInstrument } from '@/lib/domain/fold/fold-instrument'
import { ofKind, ofStream } from '@/lib/domain/fold/order-facts'
import { certificateInForce } from '@/lib/domain/judge/certificate-in-force'
import { showReadingUnit, showUnit } from '@/lib/domain/reading'
import type { CalendarDay, Moment } from '@/lib/domain/time'
import { listStreams } from '@/lib/server/store/list-streams'
import { loadStreams } from '@/lib/server/store/load-stream'
import { type InstrumentStanding, instrumentStanding, rangeWords } from './instrument-words'
import type { ReadingDesk } from './reading-desk'

export type InstrumentRow = {
  stream: StreamId
  number: string
  kind: string
  measures: string
  certificate: string | null
  dueOn: CalendarDay | null
  range: string | null
  lastCheck: { at: Moment; words: string } | null
  standing: InstrumentStanding
}

const URGENCY: readonly InstrumentStanding[] = [
  'quarantined',
  'found wrong',
  'no certificate',
  'overdue',
  'due soon',
  'in force',
]

/** Every instrument as it stands today, what may not be used first. */
export const loadInstrumentRows = cache(async ({ desk, actor }: ReadingDesk): Promise<InstrumentRow[]> => {
  const streams = (await listStreams(desk.store, actor.tenant, 'instrument')).map((one) => one.stream)
  const { facts } = await loadStreams(desk.store, actor.tenant, streams)
  const today = desk.today(null)
  const rows = streams.flatMap((stream): InstrumentRow[] => {
    const state = foldInstrument(facts, stream, desk.now(null))
    if (!state) return []
    const registered = ofKind(ofStream(facts, stream), 'instrument-registered')[0]
    const shown =
      certificateInForce(state, today) ??
      state.certificates.toSorted((a, b) => a.body.dueOn.localeCompare(b.body.dueOn)).at(-1) ??
      null
    const check = state.checks.at(-1)
    return [
      {
        stream,
        number: state.number,
        kind: state.kind,
        measures: (registered?.body.measures ?? []).map(showUnit).join(', '),
        certificate: shown?.body.certificate ?? null,
        dueOn: shown?.body.dueOn ?? null,
        range: rangeWords(shown),
        lastCheck: check
          ? {
              at: check.observedAt,
              words: `${check.body.result}, ${check.body.coverage}: ${showReadingUnit(check.body.read)} on ${showReadingUnit(check.body.reference)}`,
            }
          : null,
        standing: instrumentStanding(state, today),
      },
    ]
  })
  return rows.sort(
    (a, b) => URGENCY.indexOf(a.standing) - URGENCY.indexOf(b.standing) || a.number.localeCompare(b.number),
  )
})
