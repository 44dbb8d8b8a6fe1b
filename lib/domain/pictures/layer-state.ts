import type { AttemptState, PointState, RepairState } from '../fold/repair-state'
import type { LayerState } from './picture'

const FALLEN = ['lapsed', 'withdrawn', 'in question', 'passed without release', 'refused']

/** State of one point for drawing: a hold waived into a concession counts as released, what waits on nobody and passes as well. */
export function pointLayerState(point: PointState): LayerState {
  const { current } = point
  if (FALLEN.includes(current.state) || current.questions.length > 0) return 'broken'
  if (current.state === 'released' || current.state === 'not applicable' || current.conceded !== null) return 'released'
  return current.state === 'submitted' && current.verdict === 'pass' && point.awaiting.length === 0
    ? 'released'
    : 'open'
}

/**
 * State of a layer that several points are about: broken when any of them fell or is in question, released once all of those in the plan are,
 * open otherwise. A layer drawn from an attempt that was superseded is broken.
 */
export function layerStateOf(
  state: RepairState,
  points: readonly string[],
  drawnFrom: AttemptState | null,
): LayerState {
  const states = state.points
    .filter((point) => points.includes(point.no))
    .map((point) => {
      const isOld =
        drawnFrom !== null &&
        drawnFrom.point === point.no &&
        drawnFrom.attempt < point.current.attempt &&
        point.current.records.length === 0
      return isOld ? 'broken' : pointLayerState(point)
    })
  if (states.includes('broken')) return 'broken'
  return states.length > 0 && states.every((one) => one === 'released') ? 'released' : 'open'
}

/** The layer's state in words, for its callout. */
export function layerWords(state: RepairState, points: readonly string[], layer: LayerState): string {
  if (layer === 'released') return 'released'
  if (layer === 'open') return 'open'
  const fallen = state.points.find((point) => points.includes(point.no) && pointLayerState(point) === 'broken')
  if (!fallen) return 'superseded'
  return fallen.current.questions.length > 0 ? 'in question' : fallen.current.state
}
