import type { Disposition } from '@/lib/domain/fold/fold-nonconformance'
import type { Act } from './authorise'
import { factCommand } from './fact-command'
import { isRefusal, stateToFollow } from './nonconformance-barrier'

/** Who proposes each disposition. @source JOB.md section 5 */
const PROPOSED_BY: Record<Disposition, Act> = {
  rework: 'propose as lead or inspector', repair: 'propose as engineer', replace: 'propose as engineer or inspector', 'use as is': 'propose as engineer',
  'return or scrap': 'propose as stores or inspector', 'no effect': 'propose as inspector',
}

/** Propose a disposition; a later proposal takes the place of an earlier one. Refuses `not-decided` (`state-does-not-allow`) and as every fact command. */
export const proposeDisposition = factCommand({
  kind: 'disposition-proposed', on: 'nonconformance', act: (body) => PROPOSED_BY[body.disposition],
  check: async (desk, subject) => {
    const state = stateToFollow(desk, subject, ['raised', 'contained', 'assessed', 'reopened', 'disposition proposed'])
    return isRefusal(state) ? state : null
  },
})
