import type { PointState } from '@/lib/domain/fold/repair-state'
import type { RecordType } from '@/lib/domain/records/record'

const SECTION_OF_RECORD: Partial<Record<RecordType, number>> = {
  defect: 5,
  design: 5,
  permit: 7,
  materials: 8,
  instruments: 9,
  cleanliness: 11,
  profile: 11,
  climate: 11,
  'pre-wrap': 11,
  arrest: 12,
  'arrest-watch': 12,
  'filler-mix': 12,
  'filler-thickness': 12,
  'filler-cure': 12,
  primer: 13,
  'resin-mix': 13,
  ply: 13,
  'ply-count': 13,
  'tape-roll': 13,
  'tape-wrap': 13,
  cure: 14,
  hardness: 15,
  thickness: 15,
  visual: 15,
  'pressure-test': 16,
  checklist: 20,
  handover: 20,
  'in-service': 22,
  removal: 22,
}

/** Section in which a point is printed: by what the plan lets it record, otherwise by what was recorded; a point of neither is printed with the plan. */
export function sectionOfPoint(point: PointState): number {
  const types = [
    ...point.plan.records.map((one) => one.type),
    ...point.attempts.flatMap((attempt) => attempt.records.map((one) => one.record.type)),
  ]
  return types.map((type) => SECTION_OF_RECORD[type]).find((one) => one !== undefined) ?? 6
}
