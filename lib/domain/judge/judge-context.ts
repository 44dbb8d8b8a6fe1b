import type { FactId, PersonId, StreamId } from '../facts/fact'
import type { PhotoState } from '../fold/repair-state'
import type { BatchState, InstrumentState, PersonState } from '../fold/store-states'
import type { PlanPoint } from '../plan'
import type { Reading } from '../reading'
import type { PointRecord, RecordOf } from '../records/record'
import type { PointNo, Specification } from '../specification'
import type { CalendarDay, Moment } from '../time'

/** A record, perhaps still being keyed: every field but `type` may be missing or half filled. Missing is never zero. */
export type DraftRecord = {
  [T in PointRecord['type']]: { type: T } & Partial<Omit<RecordOf<T>, 'type'>>
}[PointRecord['type']]

/** One reading that a record yields, under the quantity's name. */
export type YieldedReading = {
  quantity: string
  mark: string
  reading: Reading
  instrument?: StreamId
  at?: Moment
  /** Readings as keyed that were said to come from several taps, with those taps: this one, or both heights behind a difference. */
  tapped?: Tapped[]
}
export type Tapped = { reading: Reading; taps: readonly Reading[] }
export type YieldedEvent = { name: string; at: Moment; of?: string }
export type YieldedFlag = { name: string; value: 'yes' | 'no' }
export type YieldedUse = {
  of: StreamId
  role: string
  at: Moment
  into?: string
  amount?: { digits: number; scale: number; unit: string }
  supervisedBy?: PersonId
}

/** What a record yields to the rules: readings by quantity, events, yes/no statements and uses of batches, instruments and persons. */
export type RecordYield = {
  readings: YieldedReading[]
  events: YieldedEvent[]
  flags: YieldedFlag[]
  uses: YieldedUse[]
}

/** A record as the judge takes it: governing, corrected. A record being keyed has no fact id yet. */
export type JudgedRecord = {
  fact: FactId | null
  record: DraftRecord
  point: PointNo
  attempt: number
  observedAt: Moment
  observedBy: PersonId
}

/** Everything a criterion needs, as plain data: the server builds it by folding, the phone gets it with the form. */
export type JudgeContext = {
  point: PlanPoint
  attempt: number
  asOf: Moment
  /** Local day and offset at the work place come from the moments' own offsets. */
  specification: { stream: StreamId; revision: number; body: Specification }
  /** Records of this attempt, by observed time. */
  records: JudgedRecord[]
  /** Governing records of every other point (and earlier attempts where they still hold), for windows and order. */
  otherRecords: JudgedRecord[]
  design: RecordOf<'design'> | null
  defect: RecordOf<'defect'> | null
  geometry: 'straight' | 'bend' | 'tee' | 'nozzle'
  photos: PhotoState[]
  /** Demands that photos on this device answer, one each, before the record has them. Absent on the server. */
  photosToCome?: readonly string[]
  batches: Record<StreamId, BatchState>
  instruments: Record<StreamId, InstrumentState>
  persons: Record<StreamId, PersonState>
  /** First release of this attempt, if any: a certificate or qualification corrected after it puts the result in question. */
  releasedAt: Moment | null
  /** Known clock error by device id, milliseconds, of the devices that took these records. */
  clockErrors: Record<FactId, number>
  today: CalendarDay
}
