import { factCommand } from './fact-command'
import { isRefusal, stateToFollow } from './nonconformance-barrier'

/** Record what was found and its cause. Refuses `not-decided` (`state-does-not-allow`) and as every fact command. */
export const assessNonconformance = factCommand({
  kind: 'assessed', on: 'nonconformance', act: 'contain',
  check: async (desk, subject) => {
    const state = stateToFollow(desk, subject, ['raised', 'contained', 'assessed', 'reopened'])
    return isRefusal(state) ? state : null
  },
})
