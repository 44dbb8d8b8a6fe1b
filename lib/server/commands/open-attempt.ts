import { notDecided } from './decision-ground'
import { factCommand } from './fact-command'

/**
 * Open the next attempt at one or more points, with the reason; the failed one stays beside it: `{ stream, body: { points, attempt, reason, nonconformance? } }`.
 * Refuses `no-such-attempt` when it is not the next attempt of every point, `not-found` for a nonconformance that is not there, `not-decided`
 * (`accepted-already`), and as every fact command.
 */
export const openAttempt = factCommand({
  kind: 'attempt-opened', on: 'repair', act: 'open attempt',
  check: async (desk, { stream }, { body }) => {
    const state = await desk.stateOf(stream)
    if (!state) return { code: 'not-found' }
    if (state.acceptance) return notDecided('accepted-already')
    const last = body.points.map((no) => state.points.find((one) => one.no === no)?.current.attempt ?? null)
    if (last.includes(null) || Math.max(...last.map((one) => one ?? 0)) + 1 !== body.attempt) return { code: 'no-such-attempt' }
    return body.nonconformance && !(await desk.factsOf(body.nonconformance)) ? { code: 'not-found' } : null
  },
})
