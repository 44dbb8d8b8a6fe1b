import { factCommand } from './fact-command'

/** End a granted role from a day on, with the reason. Refuses `not-own-role` for one's own, `not-found` when the grant is not of this project, and those of every fact command. */
export const endRole = factCommand({
  kind: 'role-ended',
  on: 'project',
  act: 'administer',
  check: async (desk, { facts }, { body }) => {
    const grant = facts.find((one) => one.kind === 'role-granted' && one.id === body.grant)
    if (grant?.kind !== 'role-granted') return { code: 'not-found' }
    return grant.body.person === desk.actor.person ? { code: 'not-own-role' } : null
  },
})
