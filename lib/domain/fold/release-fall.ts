import type { FactOf } from '../facts/fact-kinds'
import type { Moment } from '../time'
import type { Fall } from './fall'
import { ofKind } from './order-facts'
import type { RepairGround } from './repair-ground'
import type { ReleaseStateName } from './repair-state'

/** One fall of one release. */
export type ReleaseFall = {
  at: Moment
  cause: string
  by: Fall['by']
  fact: Fall['fact']
  name: Exclude<ReleaseStateName, 'valid' | 'used'>
  timed: boolean
  event: Fall['event']
}

/**
 * The fall of a release that was given without a network while the record moved on: in question from the start until a person rules, and withdrawn from the start where it is ruled to fall.
 */
export function blindFall(ground: RepairGround, fact: FactOf<'released'>): ReleaseFall | null {
  const noted = ofKind(ground.facts, 'conflict-noted').find(
    (one) => one.body.repair === ground.stream && one.body.decision === fact.id,
  )
  if (!noted) return null
  const settled = ofKind(ground.own, 'conflict-settled').find((one) => one.body.conflict === noted.id)
  if (settled?.body.ruling === 'decision stands') return null
  const how = settled
    ? { cause: `Given without knowing the record: ${settled.body.reason}`, by: settled.observedBy, fact: settled.id }
    : { cause: 'Given without a network, not knowing what the record held', by: null, fact: noted.id }
  const name = settled?.body.ruling === 'decision falls' ? ('withdrawn' as const) : ('in question' as const)
  return { at: fact.observedAt, ...how, name, timed: false, event: null }
}
