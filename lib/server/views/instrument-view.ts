import type { StreamId } from '@/lib/domain/facts/fact'
import type { BodyOf, FactOf } from '@/lib/domain/facts/fact-kinds'
import { foldInstrument } from '@/lib/domain/fold/fold-instrument'
import { ofKind } from '@/lib/domain/fold/order-facts'
import type { InstrumentState } from '@/lib/domain/fold/store-states'
import { statusOn } from '@/lib/domain/judge/certificate-in-force'
import { showReadingUnit } from '@/lib/domain/reading'
import { dayOf } from '@/lib/domain/time'
import { type InstrumentStanding, instrumentEvents, instrumentStanding, rangeWords } from './instrument-words'
import { loadNames, type ReadingDesk } from './reading-desk'
import type { EventLine } from './trace-event-line'

export type CertificateLine = {
  fact: string
  certificate: string
  calibratedOn: string | null
  dueOn: string
  laboratory: string | null
  range: string | null
  uncertainty: string | null
  today: ReturnType<typeof statusOn>
}
export type InstrumentView = {
  state: InstrumentState
  registered: BodyOf<'instrument-registered'>
  standing: InstrumentStanding
  certificates: CertificateLine[]
  events: EventLine[]
  length: number
  /** Checks over the full scale that were within tolerance, oldest first. */
  fullChecks: { fact: string; at: string; words: string }[]
  lastFoundWrong: FactOf<'found-wrong'> | null
}

/** An instrument as its page shows it; null when it was never registered. */
export async function loadInstrumentView(
  { desk }: Pick<ReadingDesk, 'desk'>,
  stream: StreamId,
): Promise<InstrumentView | null> {
  const facts = await desk.factsOf(stream)
  const state = facts && foldInstrument(facts, stream, desk.now(null))
  const registered = facts && ofKind(facts, 'instrument-registered')[0]?.body
  if (!facts || !state || !registered) return null
  const today = desk.today(null)
  return {
    state,
    registered,
    standing: instrumentStanding(state, today),
    length: facts.length,
    events: instrumentEvents(facts, stream, await loadNames(desk), desk.now(null)),
    certificates: state.certificates
      .toSorted((a, b) => b.body.dueOn.localeCompare(a.body.dueOn))
      .map((one) => ({
        fact: one.id,
        certificate: one.body.certificate,
        calibratedOn: one.body.calibratedOn ?? null,
        dueOn: one.body.dueOn,
        laboratory: one.body.laboratory ?? null,
        range: rangeWords(one),
        uncertainty: one.body.expandedUncertainty ? showReadingUnit(one.body.expandedUncertainty) : null,
        today: statusOn(one, today),
      })),
    fullChecks: state.checks
      .filter((one) => one.body.coverage === 'full scale' && one.body.result === 'within')
      .map((one) => ({
        fact: one.id,
        at: one.observedAt,
        words: `${dayOf(one.observedAt)}: ${showReadingUnit(one.body.read)} on ${showReadingUnit(one.body.reference)}`,
      })),
    lastFoundWrong: state.foundWrong.at(-1) ?? null,
  }
}
