import { factCommand } from './fact-command'
import { isRefusal, stateToFollow } from './nonconformance-barrier'

/** Record that the approved action started. Refuses `not-decided` (`state-does-not-allow`) and as every fact command. */
export const startAction = factCommand({
  kind: 'action-started', on: 'nonconformance', act: 'contain',
  check: async (desk, subject) => {
    const state = stateToFollow(desk, subject, ['disposition approved', 'action in progress'])
    return isRefusal(state) ? state : null
  },
})
