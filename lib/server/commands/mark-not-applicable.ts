import { mayMarkNotApplicable } from '@/lib/domain/fold/may-submit'
import { decidingActor } from './decision-ground'
import { factCommand } from './fact-command'
import { barrierOf } from './refusal-of'

/**
 * Mark a point not applicable in an attempt, with the reason: neither blank, nor zero, nor a pass. Refuses `not-decided` (see `mayMarkNotApplicable`) and as
 * every fact command.
 */
export const markNotApplicable = factCommand({
  kind: 'marked-not-applicable',
  on: 'repair',
  act: 'mark not applicable',
  check: async (desk, { stream, place }, { body }) => {
    const state = await desk.stateOf(stream)
    return state
      ? barrierOf(
          'mark not applicable',
          mayMarkNotApplicable(state, body.point, body.attempt, decidingActor(desk, place)),
        )
      : { code: 'not-found' }
  },
})
