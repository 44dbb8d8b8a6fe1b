import { streamOf } from '@/lib/domain/facts/fact'
import { factCommand } from './fact-command'

/**
 * Grant a person a role in a project from a day on. Refuses `not-own-role` when the administrator means himself, `not-found` when there is no such
 * person, `not-decided` (`approve-is-for-inspectors`), and those of every fact command.
 */
export const grantRole = factCommand({
  kind: 'role-granted',
  on: 'project',
  act: 'administer',
  check: async (desk, _subject, { body }) => {
    if (body.person === desk.actor.person) return { code: 'not-own-role' }
    if (body.approve && body.role !== 'inspector')
      return { code: 'not-decided', why: 'approve-is-for-inspectors', detail: [] }
    return (await desk.factsOf(streamOf('person', body.person))) ? null : { code: 'not-found' }
  },
})
