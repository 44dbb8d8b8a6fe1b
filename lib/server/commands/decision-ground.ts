import type { z } from 'zod'
import type { StreamId } from '@/lib/domain/facts/fact'
import type { Heads } from '@/lib/domain/facts/repair-bodies'
import type { DecidingActor } from '@/lib/domain/fold/decision'
import type { RepairState } from '@/lib/domain/fold/repair-state'
import { done, type Result, refused } from '@/lib/domain/result'
import { instantOf, type Moment } from '@/lib/domain/time'
import type { Actor } from '@/lib/server/auth/actor'
import { loadRepairState } from '@/lib/server/store/load-repair-state'
import { type Act, authorise } from './authorise'
import type { Desk, KeptStream } from './desk'
import { type Place, placeOf } from './place-of'
import type { Refusal } from './refusal'

/** What a decision about a repair stands on. */
export type DecisionGround = { kept: KeptStream; place: Place; state: RepairState }

/**
 * Load a repair for a decision and see that the actor may take it. Refuses `not-found`, `not-allowed`.
 * @param decidedAt when it was decided on a device; where its clock runs ahead of ours, what it entered just before is seen all the same
 */
export async function decisionGround(
  desk: Desk,
  repair: StreamId,
  act: Act,
  decidedAt?: Moment,
): Promise<Result<DecisionGround, Refusal>> {
  const kept = await desk.streamOf(repair)
  const place = kept && (await placeOf(desk, repair, kept.facts))
  if (!kept || !place) return refused({ code: 'not-found' })
  const barred = authorise(desk.actor, place.project, desk.today(place.offset), act)
  if (barred) return refused(barred)
  const isAhead = decidedAt !== undefined && instantOf(decidedAt) > instantOf(desk.now(null))
  const state = isAhead
    ? await loadRepairState(desk.store, desk.actor.tenant, repair, decidedAt)
    : await desk.stateOf(repair)
  return state ? done({ kept, place, state }) : refused({ code: 'not-found' })
}

/** An actor as the domain's decisions take one: the roles of today at the place. */
export function decidingActor(desk: Desk, place: Place, actor: Actor = desk.actor): DecidingActor {
  const day = desk.today(place.offset)
  return {
    person: actor.person,
    roles: actor.rolesOn(place.project, day),
    approve: actor.approvesOn(place.project, day, 'inspector'),
  }
}

/** Heads that a decision names must name its own repair: otherwise it says nothing of what was seen. */
export function namesOwnHead(heads: z.infer<typeof Heads>, repair: StreamId): Refusal | null {
  return heads.some((head) => head.stream === repair)
    ? null
    : { code: 'invalid', fields: { 'body.heads': [`must name ${repair}`] } }
}
