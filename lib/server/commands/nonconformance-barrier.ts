import type { PersonId } from '@/lib/domain/facts/fact'
import { foldNonconformance } from '@/lib/domain/fold/fold-nonconformance'
import type { NonconformanceState } from '@/lib/domain/fold/repair-state'
import type { Desk } from './desk'
import type { Subject } from './fact-command'
import type { Refusal } from './refusal'

type StateName = NonconformanceState['state']

/** The state of a nonconformance when it is one of those an act may follow; otherwise `not-decided` with the state it is in. */
export function stateToFollow(desk: Desk, { stream, facts, place }: Subject, follows: readonly StateName[]): NonconformanceState | Refusal {
  const state = foldNonconformance(facts, stream, desk.now(place.offset))
  if (!state) return { code: 'not-found' }
  return follows.includes(state.state) ? state : { code: 'not-decided', why: 'state-does-not-allow', detail: [state.state] }
}

/** Whether what `stateToFollow` gave is a refusal. */
export function isRefusal(one: NonconformanceState | Refusal): one is Refusal {
  return 'code' in one
}

/** Who did the work of a nonconformance: they neither verify nor close it. */
export function doersOf(state: NonconformanceState): PersonId[] {
  return state.facts.flatMap((fact) => (fact.kind === 'action-started' || fact.kind === 'action-done' ? [fact.observedBy] : []))
}
