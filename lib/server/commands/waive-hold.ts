import { factCommand } from './fact-command'

/**
 * Waive a client's or engineer's hold or witness: by a named person in writing, for that point only, before the step. Refuses `not-own-role` when the
 * waiver is not in the actor's own name, `not-decided` (`waived-too-late`) when the attempt has records already, and those of every fact command.
 */
export const waiveHold = factCommand({
  kind: 'waived', on: 'repair', act: (body) => (body.party === 'engineer' ? 'waive engineer hold' : 'waive client hold'),
  check: async (desk, { facts }, { body }) => {
    if (body.by !== desk.actor.person || (body.party !== 'client' && body.party !== 'engineer')) return { code: 'not-own-role' }
    const begun = facts.some((one) => one.kind === 'recorded' && one.body.point === body.point && one.body.attempt === body.attempt)
    return begun ? { code: 'not-decided', why: 'waived-too-late', detail: [] } : null
  },
})
