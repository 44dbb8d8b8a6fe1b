import type { PointState, RepairState } from './repair-state'

/** Whether a point of the plan takes the closing checklist, beside which a repair is accepted. */
export function isClosingPoint({ plan }: Pick<PointState, 'plan'>): boolean {
  return plan.records.some((one) => one.type === 'checklist')
}

/** The point at which a repair is accepted; null where its plan has none. */
export function closingPoint(state: Pick<RepairState, 'points'>): PointState | null {
  return state.points.find(isClosingPoint) ?? null
}

/** Whether the closing checklist is recorded, before which nothing is accepted at the point. */
export function isClosingRecorded({ current }: Pick<PointState, 'current'>): boolean {
  return current.records.some((one) => one.record.type === 'checklist')
}
