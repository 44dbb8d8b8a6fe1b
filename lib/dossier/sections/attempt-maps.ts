import type { AttemptState, RecordState } from '@/lib/domain/fold/repair-state'
import { surfaceMapPicture } from '@/lib/domain/pictures/surface-map-picture'
import { verdictsByMark } from '@/lib/domain/pictures/verdicts-by-mark'
import type { Unit } from '@/lib/domain/reading'
import type { MarkedReading } from '@/lib/domain/records/common'
import { RECORD_TITLES } from '@/lib/domain/records/record-titles'
import type { Block } from '../blocks'
import { FIELD_QUANTITIES } from '../records/field-quantities'

/** The unrolled pipe for each record of an attempt that was read over a grid. */
export function attemptMaps(attempt: AttemptState): Block[] {
  return attempt.records.filter((one) => one.overruledBy === null).flatMap((one) => recordMap(one, attempt, ''))
}

/** The unrolled pipe of one record; nothing when it has no grid of readings. */
export function recordMap({ record }: RecordState, attempt: AttemptState, prefix: string): Block[] {
  const field =
    record.type === 'hardness' || record.type === 'thickness'
      ? 'readings'
      : record.type === 'defect' || record.type === 'removal'
        ? 'wall'
        : null
  if (field === null || !('grid' in record) || record.grid === undefined) return []
  const readings: readonly MarkedReading[] =
    record.type === 'defect' || record.type === 'removal'
      ? record.wall
      : record.type === 'hardness' || record.type === 'thickness'
        ? record.readings
        : []
  const unit = readings.flatMap(({ reading }): Unit[] => ('unit' in reading ? [reading.unit] : []))[0]
  if (unit === undefined) return []
  const quantity = FIELD_QUANTITIES[`${record.type}.${field}`]?.[0] ?? ''
  const numbers = new Set(readings.filter(({ reading }) => reading.kind === 'number').map((one) => one.mark))
  const limit =
    attempt.criteria.find(({ criterion: { rule } }) => rule.kind === 'each' && rule.quantity === quantity)?.limit ??
    null
  const title = `${prefix}${RECORD_TITLES[record.type] ?? record.type}: the pipe unrolled`
  return [
    {
      kind: 'picture',
      title,
      maxHeightPt: 190,
      picture: surfaceMapPicture({
        title,
        grid: record.grid,
        readings,
        verdictAt: verdictsByMark(attempt, quantity, (mark) => numbers.has(mark)),
        unit,
        limit,
      }),
    },
  ]
}
