import type { FactId } from '../facts/fact'
import type { RepairState } from '../fold/repair-state'
import type { PointNo } from '../specification'

/** Point and attempt under which each record of a repair is shown, by its fact. */
export function entryPlaces(state: RepairState): Map<string, { point: PointNo; attempt: number; fact: FactId }> {
  return new Map(
    state.points.flatMap((point) =>
      point.attempts.flatMap((attempt) =>
        attempt.records.map(
          ({ fact }) => [fact.id, { point: point.no, attempt: attempt.attempt, fact: fact.id }] as const,
        ),
      ),
    ),
  )
}
