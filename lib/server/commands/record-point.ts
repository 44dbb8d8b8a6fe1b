import { recordActOf } from './authorise'
import { factCommand } from './fact-command'

/**
 * Record what was observed at a point and attempt: `{ stream, body: { point, attempt, record }, ...Entry }`. An observation is never refused for order,
 * lapse, missing release or an expired batch: those give findings. Refuses `invalid`, `not-found`, `not-allowed`, `late-reason-missing`, `entered-in-future`.
 */
export const recordPoint = factCommand({
  kind: 'recorded',
  on: 'repair',
  act: (body) => recordActOf(body.record.type),
  observation: true,
})
