import type { z } from 'zod'
import type { StreamId } from '@/lib/domain/facts/fact'
import type { Heads } from '@/lib/domain/facts/repair-bodies'
import type { AttemptState, PointState, RepairState } from '@/lib/domain/fold/repair-state'
import { done, refused, type Result } from '@/lib/domain/result'
import { type Act, authorise } from './authorise'
import type { Desk, KeptStream } from './desk'
import { type Place, placeOf } from './place-of'
import type { Refusal } from './refusal'

/** What a decision about a repair stands on. */
export type DecisionGround = { kept: KeptStream; place: Place; state: RepairState }

/**
 * Load a repair for a decision and see that the actor may take it. Refuses `not-found`, `not-allowed`.
 */
export async function decisionGround(desk: Desk, repair: StreamId, act: Act): Promise<Result<DecisionGround, Refusal>> {
  const kept = await desk.streamOf(repair)
  const place = kept && (await placeOf(desk, repair, kept.facts))
  if (!kept || !place) return refused({ code: 'not-found' })
  const barred = authorise(desk.actor, place.project, desk.today(place.offset), act)
  if (barred) return refused(barred)
  const state = await desk.stateOf(repair)
  return state ? done({ kept, place, state }) : refused({ code: 'not-found' })
}

/** The current attempt of a point, when it is the one meant. Refuses `no-such-attempt` for a point that the plan does not have or another attempt. */
export function currentAttempt(state: RepairState, no: string, attempt: number): Result<{ point: PointState; current: AttemptState }, Refusal> {
  const point = state.points.find((one) => one.no === no)
  return point && point.current.attempt === attempt ? done({ point, current: point.current }) : refused({ code: 'no-such-attempt' })
}

/** Heads that a decision names must name its own repair: otherwise it says nothing of what was seen. */
export function namesOwnHead(heads: z.infer<typeof Heads>, repair: StreamId): Refusal | null {
  return heads.some((head) => head.stream === repair) ? null : { code: 'invalid', fields: { 'body.heads': [`must name ${repair}`] } }
}

/** A decision that the rules do not allow now, with why and each thing lacking. */
export function notDecided(why: string, detail: readonly string[] = []): Refusal {
  return { code: 'not-decided', why, detail: [...detail] }
}
