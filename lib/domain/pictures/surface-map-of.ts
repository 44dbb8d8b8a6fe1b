import { toNumber } from '../decimal'
import type { FactId } from '../facts/fact'
import type { AttemptState, RecordState, RepairState } from '../fold/repair-state'
import { measuredExact } from '../judge/exact-units'
import type { VerdictKind } from '../judge/verdict'
import type { Measured, Unit } from '../reading'
import type { Grid, MarkedReading } from '../records/common'
import { clockDegrees } from './map-frame'
import { verdictsByMark } from './verdicts-by-mark'

/** One grid of readings of a record, with what the specification says of it. */
export type SurfaceMapOf = {
  title: string
  quantity: string
  fact: FactId
  attempt: number
  grid: Grid
  readings: readonly MarkedReading[]
  unit: Unit
  limit: string | null
  verdictAt: (mark: string) => VerdictKind | null
  /** Number and spacing of marks, demanded and taken, in words. */
  marks: string
}

/** Every grid of readings in an attempt that can be drawn on the unrolled pipe. */
export function surfaceMapsOf(state: Pick<RepairState, 'design' | 'defect'>, attempt: AttemptState): SurfaceMapOf[] {
  return attempt.records.flatMap((one) => {
    const map = one.overruledBy === null ? surfaceMapOf(one, attempt, state) : null
    return map ? [map] : []
  })
}

/** The grid of one record; null when it has no readings over a grid. */
export function surfaceMapOf(
  { record, fact }: RecordState,
  attempt: AttemptState,
  state: Pick<RepairState, 'design' | 'defect'>,
): SurfaceMapOf | null {
  const found = gridOf(record)
  const unit = found?.readings.flatMap(({ reading }): Unit[] => ('unit' in reading ? [reading.unit] : []))[0]
  if (!found || unit === undefined) return null
  const numbered = new Set(found.readings.filter(({ reading }) => reading.kind === 'number').map((one) => one.mark))
  const results = attempt.criteria.filter(
    ({ criterion: { rule } }) => 'quantity' in rule && rule.quantity === found.quantity,
  )
  const limit = results.find(({ criterion: { rule } }) => rule.kind === 'each')?.limit ?? null
  return {
    ...found,
    fact: fact.id,
    attempt: attempt.attempt,
    unit,
    limit,
    verdictAt: verdictsByMark(attempt, found.quantity, (mark) => numbered.has(mark)),
    marks: marksText(found, results, state),
  }
}

type Found = { title: string; quantity: string; grid: Grid; readings: readonly MarkedReading[] }

function gridOf(record: RecordState['record']): Found | null {
  switch (record.type) {
    case 'hardness':
      return { title: 'Hardness', quantity: 'hardness', grid: record.grid, readings: record.readings }
    case 'thickness':
      return {
        title: 'Laminate thickness',
        quantity: 'laminate-thickness',
        grid: record.grid,
        readings: record.readings,
      }
    case 'defect':
      return { title: 'Wall as found', quantity: 'wall', grid: record.grid, readings: record.wall }
    case 'removal':
      return record.grid
        ? { title: 'Wall after removal', quantity: 'removal-wall', grid: record.grid, readings: record.wall }
        : null
    default:
      return null
  }
}

function marksText(
  { grid, readings }: Found,
  results: AttemptState['criteria'],
  state: Pick<RepairState, 'design' | 'defect'>,
): string {
  const count = results.find(({ criterion: { rule } }) => rule.kind === 'count')
  const demanded =
    count?.criterion.rule.kind === 'count'
      ? `${count.criterion.rule.atLeast} demanded (clause ${count.criterion.clause})`
      : `${grid.stations.length * grid.clocks.length} on the chalk grid, no number demanded`
  const taken = readings.filter(
    ({ reading }) =>
      reading.kind === 'number' ||
      reading.kind === 'through-wall' ||
      reading.kind === 'below' ||
      reading.kind === 'above',
  ).length
  const axial = widest(
    grid.stations.map((one) => toNumber(one.fromLeak)).sort((a, b) => a - b),
    null,
  )
  const turn = widest(
    grid.clocks.map(clockDegrees).sort((a, b) => a - b),
    360,
  )
  const diameter = diameterMm(state)
  const spacing = [
    ...(axial === null ? [] : [`${axial} mm apart along at most`]),
    ...(turn === null
      ? []
      : [
          diameter === null
            ? `${turn}° apart round`
            : `${((Math.PI * diameter * turn) / 360).toFixed(0)} mm apart round at most (diameter ${diameter})`,
        ]),
  ]
  return [`marks: ${taken} taken, ${demanded}`, ...spacing].join('; ')
}

/** Widest step between neighbours; round a closed ring where its length is given. */
function widest(sorted: readonly number[], ring: number | null): number | null {
  const closed = ring === null || sorted[0] === undefined ? sorted : [...sorted, sorted[0] + ring]
  const steps = closed.slice(1).map((value, index) => value - (closed[index] ?? value))
  return steps.length === 0 ? null : Math.max(...steps)
}

function diameterMm({ design, defect }: Pick<RepairState, 'design' | 'defect'>): number | null {
  const given: Measured | undefined = defect?.diameters[0] ?? design?.designDiameter
  const exact = measuredExact(given, 'mm')
  return exact ? toNumber(exact) : null
}
