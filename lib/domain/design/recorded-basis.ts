import type { FactId, PersonId } from '../facts/fact'
import type { AttemptState, RecordState, RepairState } from '../fold/repair-state'
import type { RecordOf, RecordType } from '../records/record'
import type { PointNo } from '../specification'
import type { Moment } from '../time'

/** A governing record with the fact that it came from. */
export type Recorded<T extends RecordType> = { record: RecordOf<T>; one: RecordState; attempt: AttemptState }

/** Where a figure comes from: a record, a clause of the specification, or a value typed on the page and kept nowhere. */
export type FigureSource =
  | { kind: 'record'; fact: FactId; type: RecordType; point: PointNo; by: PersonId; at: Moment }
  | { kind: 'specification'; clause: string; revision: number }
  | { kind: 'asked' }

/** Every governing record of a type with its fact, in the order of points, attempts and times. */
export function recordedOf<T extends RecordType>(state: RepairState, type: T): Recorded<T>[] {
  return state.points.flatMap((point) =>
    point.attempts.flatMap((attempt) =>
      attempt.records.flatMap((one) =>
        isOf(one.record, type) && one.overruledBy === null ? [{ record: one.record, one, attempt }] : [],
      ),
    ),
  )
}

/** The design sheet in force: the governing record of the highest revision, the later of two of one revision. */
export function designInForce(state: RepairState): Recorded<'design'> | null {
  return recordedOf(state, 'design').reduce<Recorded<'design'> | null>(
    (latest, one) => (latest === null || one.record.revision >= latest.record.revision ? one : latest),
    null,
  )
}

/** The defect as last found. */
export function defectInForce(state: RepairState): Recorded<'defect'> | null {
  return recordedOf(state, 'defect').at(-1) ?? null
}

/** The source that a record is. */
export function sourceOf({ one, attempt }: { one: RecordState; attempt: AttemptState }): FigureSource {
  return {
    kind: 'record',
    fact: one.fact.id,
    type: one.record.type,
    point: attempt.point,
    by: one.fact.observedBy,
    at: one.fact.observedAt,
  }
}

function isOf<T extends RecordType>(record: { type: RecordType }, type: T): record is RecordOf<T> {
  return record.type === type
}
