import type { PersonId, StreamId } from '@/lib/domain/facts/fact'
import type { BodyOf, Fact, FactOf } from '@/lib/domain/facts/fact-kinds'
import { foldInstrument } from '@/lib/domain/fold/fold-instrument'
import { ofKind, orderFacts } from '@/lib/domain/fold/order-facts'
import type { InstrumentState } from '@/lib/domain/fold/repair-state'
import { statusOn } from '@/lib/domain/judge/certificate-in-force'
import { showReadingUnit } from '@/lib/domain/reading'
import { dayOf } from '@/lib/domain/time'
import { instrumentStanding, type InstrumentStanding, rangeWords } from './instrument-list-view'
import { loadNames, type ReadingDesk } from './reading-desk'
import { type EventLine, eventLine } from './trace-event-line'

export type CertificateLine = { fact: string; certificate: string; calibratedOn: string | null; dueOn: string; laboratory: string | null; range: string | null; uncertainty: string | null; today: ReturnType<typeof statusOn> }
export type InstrumentView = {
  state: InstrumentState; registered: BodyOf<'instrument-registered'>; standing: InstrumentStanding; certificates: CertificateLine[]; events: EventLine[]; length: number
  /** Checks over the full scale that were within tolerance, oldest first. */
  fullChecks: { fact: string; at: string; words: string }[]
  lastFoundWrong: FactOf<'found-wrong'> | null
}

/** An instrument as its page shows it; null when it was never registered. */
export async function loadInstrumentView({ desk }: Pick<ReadingDesk, 'desk'>, stream: StreamId): Promise<InstrumentView | null> {
  const facts = await desk.factsOf(stream)
  const state = facts && foldInstrument(facts, stream, desk.now(null))
  const registered = facts && ofKind(facts, 'instrument-registered')[0]?.body
  if (!facts || !state || !registered) return null
  const today = desk.today(null)
  return {
    state, registered, standing: instrumentStanding(state, today), length: facts.length, events: instrumentEvents(facts, stream, await loadNames(desk), desk.now(null)),
    certificates: state.certificates.toSorted((a, b) => b.body.dueOn.localeCompare(a.body.dueOn)).map((one) => ({
      fact: one.id, certificate: one.body.certificate, calibratedOn: one.body.calibratedOn ?? null, dueOn: one.body.dueOn, laboratory: one.body.laboratory ?? null, range: rangeWords(one),
      uncertainty: one.body.expandedUncertainty ? showReadingUnit(one.body.expandedUncertainty) : null, today: statusOn(one, today),
    })),
    fullChecks: state.checks.filter((one) => one.body.coverage === 'full scale' && one.body.result === 'within').map((one) => ({ fact: one.id, at: one.observedAt, words: `${dayOf(one.observedAt)}: ${showReadingUnit(one.body.read)} on ${showReadingUnit(one.body.reference)}` })),
    lastFoundWrong: state.foundWrong.at(-1) ?? null,
  }
}

/** Everything in an instrument's stream as lines, in the order it happened. */
export function instrumentEvents(facts: readonly Fact[], stream: StreamId, names: Record<PersonId, string>, asOf: string): EventLine[] {
  return orderFacts(facts, asOf).filter((fact) => fact.stream === stream).flatMap((fact) => {
    const words = wordsOf(fact)
    return words ? [eventLine(fact, names, words[0], words[1])] : []
  })
}

function wordsOf(fact: Fact): [string, string] | null {
  switch (fact.kind) {
    case 'instrument-registered': return ['Registered', fact.body.kind]
    case 'certificate-recorded': return ['Certificate recorded', `${fact.body.certificate}, to ${fact.body.dueOn}`]
    case 'check-made': return [`Check ${fact.body.result} tolerance`, `${fact.body.coverage}: read ${showReadingUnit(fact.body.read)} on ${showReadingUnit(fact.body.reference)}, tolerance ${showReadingUnit(fact.body.tolerance)}`]
    case 'found-wrong': return ['Found wrong', `${fact.body.how}${fact.body.error ? `; error ${showReadingUnit(fact.body.error)}` : '; error not known'}`]
    case 'instrument-quarantined': return ['Quarantined', fact.body.reason]
    case 'quarantine-lifted': return ['Quarantine lifted', `${fact.body.reason}; with ${fact.body.second}`]
    default: return null
  }
}
