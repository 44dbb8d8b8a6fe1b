import * as z from 'zod'
import { StreamId, streamKind } from '@/lib/domain/facts/fact'
import { REPAIR_BODIES } from '@/lib/domain/facts/repair-bodies'
import { mayWaive } from '@/lib/domain/fold/may-release'
import { refused } from '@/lib/domain/result'
import { command } from './command'
import { decidingActor, decisionGround } from './decision-ground'
import { DecisionEntry } from './entry'
import { keptBefore } from './kept-before'
import { refusedBy } from './refusal-of'

const WaiveHold = z.strictObject({
  stream: StreamId.refine((id) => streamKind(id) === 'repair', 'a repair'),
  body: REPAIR_BODIES.waived,
  ...DecisionEntry,
})

/**
 * Waive a client's or engineer's hold or witness, now: by the named person in writing, for that point only, before the step: `{ stream, body }`. Refuses
 * `invalid`, `not-found`, `not-allowed`, `not-own-role` when the waiver is not in the actor's own name, `not-decided` (see `mayWaive`), `heads-moved`.
 */
export const waiveHold = command(WaiveHold, async (desk, form) => {
  const { stream, body } = form
  const act = body.party === 'engineer' ? 'waive engineer hold' : 'waive client hold'
  const ground = await decisionGround(desk, stream, act)
  if (!ground.ok) return ground
  const { kept, place, state } = ground.value
  if (body.by !== desk.actor.person || (body.party !== 'client' && body.party !== 'engineer'))
    return refused({ code: 'not-own-role' })
  const fact = desk.make({ stream, kind: 'waived', body, entry: form, offset: place.offset })
  const again = keptBefore(fact, kept.facts)
  if (again) return again
  const allowed = mayWaive(state, body.point, body.attempt, body.party, decidingActor(desk, place))
  return allowed.ok ? desk.append([fact], [{ stream, length: kept.facts.length }]) : refusedBy(act, allowed.error)
})
