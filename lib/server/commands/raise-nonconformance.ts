import { factCommand } from './fact-command'

/**
 * Raise a nonconformance under a number of its own: anyone may, nobody may delete it. Refuses `exists-already`, `not-found` when a repair it names is not
 * there, and as every fact command.
 */
export const raiseNonconformance = factCommand({
  kind: 'nonconformance-raised',
  on: 'nonconformance',
  act: 'raise nonconformance',
  opens: true,
  check: async (desk, _subject, { body }) => {
    const heads = await desk.headsOf(body.linked)
    return heads.every((head) => head.length > 0) ? null : { code: 'not-found' }
  },
})
