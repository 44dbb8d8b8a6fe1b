import { factCommand } from './fact-command'
import { isRefusal, stateToFollow } from './nonconformance-barrier'

/** State that it is no nonconformance, with the reason; it stays listed. Refuses `not-decided` (`state-does-not-allow`) and as every fact command. */
export const rejectNonconformance = factCommand({
  kind: 'not-a-nonconformance', on: 'nonconformance', act: 'close nonconformance',
  check: async (desk, subject) => {
    const state = stateToFollow(desk, subject, ['raised', 'contained', 'assessed', 'reopened', 'disposition proposed'])
    return isRefusal(state) ? state : null
  },
})
