import { factCommand } from './fact-command'
import { doersOf, isRefusal, stateToFollow } from './nonconformance-barrier'

/**
 * Verify that the action did what it should: by someone who did not do it. Refuses `second-person-missing` to a doer, `not-decided`
 * (`state-does-not-allow`), and as every fact command.
 */
export const verifyNonconformance = factCommand({
  kind: 'verified', on: 'nonconformance', act: 'verify nonconformance',
  check: async (desk, subject) => {
    const state = stateToFollow(desk, subject, ['disposition approved', 'action in progress'])
    if (isRefusal(state)) return state
    return doersOf(state).includes(desk.actor.person) ? { code: 'second-person-missing' } : null
  },
})
