import { factCommand } from './fact-command'
import { doersOf, isRefusal, stateToFollow } from './nonconformance-barrier'

/** Close a verified nonconformance: not by who did the work. Refuses `second-person-missing` to a doer, `not-decided` (`state-does-not-allow`), and as every fact command. */
export const closeNonconformance = factCommand({
  kind: 'closed', on: 'nonconformance', act: 'close nonconformance',
  check: async (desk, subject) => {
    const state = stateToFollow(desk, subject, ['verified'])
    if (isRefusal(state)) return state
    return doersOf(state).includes(desk.actor.person) ? { code: 'second-person-missing' } : null
  },
})
