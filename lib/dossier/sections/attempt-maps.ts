import type { AttemptState, RecordState, RepairState } from '@/lib/domain/fold/repair-state'
import { curePicture } from '@/lib/domain/pictures/cure-picture'
import { curePlotsOf } from '@/lib/domain/pictures/cure-plot'
import { pressurePicture } from '@/lib/domain/pictures/pressure-picture'
import { pressurePlotsOf } from '@/lib/domain/pictures/pressure-plot'
import { surfaceMapOf } from '@/lib/domain/pictures/surface-map-of'
import { surfaceMapPicture } from '@/lib/domain/pictures/surface-map-picture'
import { RECORD_TITLES } from '@/lib/domain/records/record-titles'
import { type Block, paragraph } from '../blocks'

/** The pictures of an attempt: cure and pressure over time, and the unrolled pipe for each record that was read over a grid. */
export function attemptMaps(attempt: AttemptState, state: RepairState): Block[] {
  return [
    ...curePlotsOf(attempt).flatMap((plot): Block[] => [
      { kind: 'picture', title: `${plot.title}: temperature over time`, maxHeightPt: 230, picture: curePicture(plot) },
      paragraph(plot.sentence, 'soft'),
    ]),
    ...pressurePlotsOf(state, attempt).flatMap((plot): Block[] => [
      { kind: 'picture', title: 'Pressure over the test', maxHeightPt: 230, picture: pressurePicture(plot) },
      paragraph(plot.sentence, 'soft'),
    ]),
    ...attempt.records.filter((one) => one.overruledBy === null).flatMap((one) => recordMap(one, attempt, '', state)),
  ]
}

/** The unrolled pipe of one record; nothing when it has no grid of readings. */
export function recordMap(
  one: RecordState,
  attempt: AttemptState,
  prefix: string,
  state: Pick<RepairState, 'design' | 'defect'>,
): Block[] {
  const map = surfaceMapOf(one, attempt, state)
  if (!map) return []
  const title = `${prefix}${RECORD_TITLES[one.record.type] ?? one.record.type}: the pipe unrolled`
  return [{ kind: 'picture', title, maxHeightPt: 230, picture: surfaceMapPicture({ ...map, title }) }]
}
