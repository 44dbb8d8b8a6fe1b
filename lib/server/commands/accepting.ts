import type { FactOf } from '@/lib/domain/facts/fact-kinds'
import { closingPoint } from '@/lib/domain/fold/closing-point'
import type { DecidingActor } from '@/lib/domain/fold/decision'
import { mayAccept } from '@/lib/domain/fold/may-accept'
import type { PointState, RepairState } from '@/lib/domain/fold/repair-state'
import { done, type Result, refused } from '@/lib/domain/result'
import { namesOwnHead } from './decision-ground'
import type { Refusal } from './refusal'
import { barrierOf, refusedBy } from './refusal-of'

/**
 * The point at which a repair is accepted, once nothing stands against the acceptance. Refuses `invalid` where its heads do not name the repair, and `not-decided` (see `mayAccept`;
 * `plan-has-no-acceptance`, `conditions-do-not-fit`).
 */
export function acceptingPoint(
  state: RepairState,
  { stream, body }: Pick<FactOf<'accepted'>, 'stream' | 'body'>,
  actor: DecidingActor,
): Result<PointState, Refusal> {
  const point = closingPoint(state)
  if (!point) return refusedBy('accept repair', { code: 'plan-has-no-acceptance' })
  if ((body.kind === 'accepted on condition') !== body.conditions.length > 0)
    return refusedBy('accept repair', { code: 'conditions-do-not-fit' })
  const barrier =
    namesOwnHead(body.heads, stream) ?? barrierOf('accept repair', mayAccept(state, body.kind, body.concession, actor))
  return barrier ? refused(barrier) : done(point)
}
