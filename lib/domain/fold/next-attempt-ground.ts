import type { PointState, RepairState } from './repair-state'

/** What the next attempt at a point may take along: later points with records at the same attempt, which may be done again with it, and open nonconformances that it may follow from. */
export function nextAttemptGround(
  state: Pick<RepairState, 'points' | 'nonconformances'>,
  { no }: Pick<PointState, 'no'>,
  attempt: number,
): {
  point: string
  attempt: number
  others: { no: string; title: string }[]
  nonconformances: { stream: string; number: string }[]
} {
  return {
    point: no,
    attempt: attempt + 1,
    others: state.points
      .filter((one) => one.no > no && one.current.records.length > 0 && one.current.attempt === attempt)
      .map((one) => ({ no: one.no, title: one.plan.title })),
    nonconformances: state.nonconformances
      .filter((one) => one.isOpen)
      .map(({ stream, number }) => ({ stream, number })),
  }
}
