import { factCommand } from './fact-command'
import { isRefusal, stateToFollow } from './nonconformance-barrier'

/** Record the immediate step that stops harm spreading. Refuses `not-decided` (`state-does-not-allow`) and as every fact command. */
export const containNonconformance = factCommand({
  kind: 'contained', on: 'nonconformance', act: 'contain',
  check: async (desk, subject) => {
    const state = stateToFollow(desk, subject, ['raised', 'reopened', 'contained', 'assessed'])
    return isRefusal(state) ? state : null
  },
})
