import { factCommand } from './fact-command'
import { isRefusal, stateToFollow } from './nonconformance-barrier'

/** Reopen a closed or rejected nonconformance, with the reason. Refuses `not-decided` (`state-does-not-allow`) and as every fact command. */
export const reopenNonconformance = factCommand({
  kind: 'reopened', on: 'nonconformance', act: 'close nonconformance',
  check: async (desk, subject) => {
    const state = stateToFollow(desk, subject, ['closed', 'rejected', 'verified'])
    return isRefusal(state) ? state : null
  },
})
