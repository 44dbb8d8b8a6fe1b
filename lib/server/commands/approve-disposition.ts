import type { Party } from '@/lib/domain/roles'
import type { Act } from './authorise'
import { factCommand } from './fact-command'
import { isRefusal, stateToFollow } from './nonconformance-barrier'

const APPROVED_BY: Record<Party, Act> = { crew: 'approve as crew', inspector: 'approve as inspector', client: 'approve as client', engineer: 'approve as engineer' }

/**
 * Approve the proposed disposition for one party that it needs. Refuses `not-found` for another proposal than the latest, `not-decided`
 * (`state-does-not-allow`, `approval-not-needed`), and as every fact command.
 */
export const approveDisposition = factCommand({
  kind: 'disposition-approved', on: 'nonconformance', act: (body) => APPROVED_BY[body.party],
  check: async (desk, subject, { body }) => {
    const state = stateToFollow(desk, subject, ['disposition proposed'])
    if (isRefusal(state)) return state
    if (state.proposal?.id !== body.proposal) return { code: 'not-found' }
    return state.needsApproval.includes(body.party) ? null : { code: 'not-decided', why: 'approval-not-needed', detail: [...state.needsApproval] }
  },
})
