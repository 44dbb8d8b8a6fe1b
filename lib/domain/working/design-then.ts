import type { AttemptState, RepairState } from '../fold/repair-state'
import type { RecordOf } from '../records/record'
import { instantOf } from '../time'

export type FoundDesign = { record: RecordOf<'design'>; fact: AttemptState['records'][number]['fact'] }

/** The design sheet in force when an attempt's work ended, as the judge takes it: by revision, then time; the latest for work not done. */
export function designThen(state: RepairState, attempt: AttemptState): FoundDesign | null {
  const until = attempt.lastAt === null ? Number.POSITIVE_INFINITY : instantOf(attempt.lastAt)
  return state.points
    .flatMap((point) => point.attempts.flatMap((one) => one.records))
    .flatMap((one): FoundDesign[] =>
      one.overruledBy === null && one.record.type === 'design' && instantOf(one.fact.observedAt) <= until
        ? [{ record: one.record, fact: one.fact }]
        : [],
    )
    .sort((a, b) => instantOf(a.fact.observedAt) - instantOf(b.fact.observedAt))
    .reduce<FoundDesign | null>(
      (latest, one) => (latest === null || one.record.revision >= latest.record.revision ? one : latest),
      null,
    )
}
