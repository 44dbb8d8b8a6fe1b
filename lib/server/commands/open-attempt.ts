import { mayOpenAttempt } from '@/lib/domain/fold/may-submit'
import { factCommand } from './fact-command'
import { barrierOf } from './refusal-of'

/**
 * Open the next attempt at one or more points, with the reason; the failed one stays beside it: `{ stream, body: { points, attempt, reason, nonconformance? } }`.
 * Refuses `not-found` for a nonconformance that is not there, `not-decided` (`point-unknown`, `attempt-taken`, `already-accepted`), and as every fact command.
 */
export const openAttempt = factCommand({
  kind: 'attempt-opened',
  on: 'repair',
  act: 'open attempt',
  check: async (desk, { stream }, { body }) => {
    const state = await desk.stateOf(stream)
    if (!state || (body.nonconformance && !(await desk.factsOf(body.nonconformance)))) return { code: 'not-found' }
    if (state.acceptance) return { code: 'not-decided', why: 'already-accepted', detail: [] }
    return barrierOf('open attempt', mayOpenAttempt(state, body.points, body.attempt))
  },
})
