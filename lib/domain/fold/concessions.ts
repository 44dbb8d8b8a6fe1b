import type { StreamId } from '../facts/fact'
import type { RepairState } from './repair-state'

/** The nonconformances under which attempts of a repair are conceded, each once. */
export function concessionsOf({ points }: Pick<RepairState, 'points'>): StreamId[] {
  return [...new Set(points.flatMap((one) => one.attempts.flatMap(({ conceded }) => (conceded ? [conceded] : []))))]
}
