import type { AttemptState, RepairState } from '../fold/repair-state'
import type { RecordOf, RecordType } from '../records/record'

export type FoundRecord<T extends RecordType> = { record: RecordOf<T>; attempt: AttemptState }

/** Every governing record of a type, in the order of points, then attempts, then observed time. */
export function recordsOf<T extends RecordType>(state: RepairState, type: T): FoundRecord<T>[] {
  return state.points.flatMap((point) =>
    point.attempts.flatMap((attempt) =>
      attempt.records.flatMap(({ record, overruledBy }) =>
        isOf(record, type) && overruledBy === null ? [{ record, attempt }] : [],
      ),
    ),
  )
}

/** The governing record of a type from the latest attempt that has one; null when none was made. */
export function latestRecord<T extends RecordType>(state: RepairState, type: T): FoundRecord<T> | null {
  return recordsOf(state, type).at(-1) ?? null
}

function isOf<T extends RecordType>(record: { type: RecordType }, type: T): record is RecordOf<T> {
  return record.type === type
}
