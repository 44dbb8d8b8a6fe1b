import type { FactId, StreamId } from '../facts/fact'
import type { AttemptState, RecordState, RepairState } from '../fold/repair-state'
import type { InstrumentState } from '../fold/store-states'
import type { DraftRecord, RecordYield } from '../judge/judge-context'
import { yieldOf } from '../judge/yield-of'
import type { Moment } from '../time'

/** One thing that a figure was computed from: as recorded, with its metric figure beside another unit, and the fact that says it. */
export type WorkingInput = { label: string; value: string; fact: FactId | null }

/** How one criterion was judged, open to who doubts it. */
export type Working = {
  formula: string
  source: string
  inputs: WorkingInput[]
  arithmetic: string[]
  limit: string
  /** The specification's decision rule as it applies here, with the guard band and the probability of conformance where they are known. */
  decision: string[]
}

/** What a working is drawn from. Instruments may be left out where they are not at hand: what needs them says so. */
export type WorkingGround = {
  state: RepairState
  attempt: AttemptState
  instruments: Readonly<Record<StreamId, InstrumentState>>
}

export type OwnRecord = { record: DraftRecord; fact: FactId; observedAt: Moment; yields: RecordYield }

/** The governing records of an attempt with what each yields to the rules. */
export function ownRecords(attempt: AttemptState): OwnRecord[] {
  return attempt.records.flatMap(({ fact, record, overruledBy }: RecordState) =>
    overruledBy === null
      ? [
          {
            record,
            fact: fact.id,
            observedAt: fact.observedAt,
            yields: yieldOf(record, fact.observedAt, fact.observedBy),
          },
        ]
      : [],
  )
}

/** Records of one type among some, typed. */
export function ofType<T extends DraftRecord['type']>(
  records: readonly OwnRecord[],
  type: T,
): { record: Extract<DraftRecord, { type: T }>; fact: FactId; observedAt: Moment }[] {
  return records.flatMap((one) =>
    one.record.type === type ? [{ ...one, record: one.record as Extract<DraftRecord, { type: T }> }] : [],
  )
}
