import { ACTS } from './authorise'
import { factCommand } from './fact-command'
import { isRefusal, stateToFollow } from './nonconformance-barrier'

/**
 * Reject the proposed disposition, with the reason: by a party whose approval it still needs. Refuses `not-found` for another proposal than the latest,
 * `not-decided` (`state-does-not-allow`, `approval-not-needed`), and as every fact command.
 */
export const rejectDisposition = factCommand({
  kind: 'disposition-rejected', on: 'nonconformance', act: 'reject disposition',
  check: async (desk, subject, { body }) => {
    const state = stateToFollow(desk, subject, ['disposition proposed'])
    if (isRefusal(state)) return state
    if (state.proposal?.id !== body.proposal) return { code: 'not-found' }
    const held = desk.actor.rolesOn(subject.place.project, desk.today(subject.place.offset))
    const speaks = state.needsApproval.some((party) => held.some((role) => (ACTS[`approve as ${party}`] as readonly string[]).includes(role)))
    return speaks ? null : { code: 'not-decided', why: 'approval-not-needed', detail: [...state.needsApproval] }
  },
})
