import { factCommand } from './fact-command'

/**
 * Choose which of several records of one point governs, with the reason; all are kept. Refuses `not-found` when a record is not of that point and
 * attempt, and those of every fact command.
 */
export const chooseGoverns = factCommand({
  kind: 'governs-chosen',
  on: 'repair',
  act: 'choose governing record',
  check: async (_desk, { facts }, { body }) => {
    const ids = new Set(
      facts
        .filter((one) => one.kind === 'recorded' && one.body.point === body.point && one.body.attempt === body.attempt)
        .map((one) => one.id),
    )
    return [body.record, ...body.over].every((id) => ids.has(id)) && !body.over.includes(body.record)
      ? null
      : { code: 'not-found' }
  },
})
