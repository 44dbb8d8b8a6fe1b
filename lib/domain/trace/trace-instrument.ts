import type { StreamId } from '../facts/fact'
import type { Fact, FactOf } from '../facts/fact-kinds'
import { foldInstrument } from '../fold/fold-instrument'
import { foldPerson } from '../fold/fold-person'
import type { Use } from '../fold/repair-state'
import type { InstrumentState, PersonState } from '../fold/store-states'
import { type CalendarDay, dayOf, instantOf, type Moment } from '../time'
import { type RepairIdentity, rowsOf, type TraceRow } from './trace-batch'

/** A period; a null end is open. */
export type Period = { from: Moment | null; to: Moment | null }
export type InstrumentTrace = {
  instrument: InstrumentState
  rows: (TraceRow & { certificate: FactOf<'certificate-recorded'> | null })[]
}
export type PersonTrace = {
  person: PersonState
  rows: (TraceRow & { qualifications: FactOf<'qualification-recorded'>[] })[]
}

/** Readings and other uses of an instrument in a period, each with the certificate that ran on the day of use; or null when never registered. */
export function traceInstrument(
  facts: readonly Fact[],
  stream: StreamId,
  uses: readonly Use[],
  repairs: readonly RepairIdentity[],
  period: Period,
  asOf: Moment,
): InstrumentTrace | null {
  const instrument = foldInstrument(facts, stream, asOf)
  if (!instrument) return null
  const rows = rowsOf(stream, uses, repairs, asOf).filter((row) => isWithin(row.at, period))
  return { instrument, rows: rows.map((row) => ({ ...row, certificate: certificateOn(instrument, dayOf(row.at)) })) }
}

/** What a person did in a period, each with the qualifications that ran on that day; or null when never registered. */
export function tracePerson(
  facts: readonly Fact[],
  stream: StreamId,
  uses: readonly Use[],
  repairs: readonly RepairIdentity[],
  period: Period,
  asOf: Moment,
): PersonTrace | null {
  const person = foldPerson(facts, stream, asOf)
  if (!person) return null
  const corrected = new Set(person.qualifications.map((one) => one.body.corrects))
  const standing = person.qualifications.filter((one) => !corrected.has(one.id))
  const rows = rowsOf(stream, uses, repairs, asOf).filter((row) => isWithin(row.at, period))
  return {
    person,
    rows: rows.map((row) => ({
      ...row,
      qualifications: standing.filter((one) => runsOn(one.body.validFrom, one.body.validTo, dayOf(row.at))),
    })),
  }
}

/** The certificate that ran on a day: the last recorded of those whose dates hold it. A later certificate never overwrites it. */
export function certificateOn(instrument: InstrumentState, day: CalendarDay): FactOf<'certificate-recorded'> | null {
  return instrument.certificates.findLast((one) => runsOn(one.body.calibratedOn, one.body.dueOn, day)) ?? null
}

function runsOn(from: CalendarDay | undefined, to: CalendarDay, day: CalendarDay): boolean {
  return (from === undefined || from <= day) && day <= to
}

/** Whether a moment lies in a period, both ends included. */
export function isWithin(at: Moment, period: Period): boolean {
  return (
    (period.from === null || instantOf(at) >= instantOf(period.from)) &&
    (period.to === null || instantOf(at) <= instantOf(period.to))
  )
}
