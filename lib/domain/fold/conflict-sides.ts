import type { ConflictState } from './conflict-state'
import type { PointState, RecordState } from './repair-state'

/** The records of a point that a conflict sets against each other, between which a person chooses; none where it is about a decision or about other facts. */
export function conflictSides(conflict: ConflictState, point: Pick<PointState, 'attempts'> | undefined): RecordState[] {
  const about = (point?.attempts ?? [])
    .flatMap((one) => one.records)
    .filter((one) => conflict.facts.includes(one.fact.id))
  const isOfRecords =
    conflict.noted === null ||
    (conflict.decision === null && about.length > 1 && about.length === conflict.facts.length)
  return isOfRecords ? about : []
}
