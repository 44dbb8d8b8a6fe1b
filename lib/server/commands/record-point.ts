import { recordActOf } from './authorise'
import { factCommand } from './fact-command'
import { copyBarrier, copyFaults } from './transcription-rules'

/**
 * Record what was observed at a point and attempt: `{ stream, body: { point, attempt, record, transcribed? }, observedBy?, ...Entry }`. An observation is never refused for order,
 * lapse, missing release or an expired batch: those give findings. A copy of what stood first on paper (`transcribed`) names who observed it and when, and the scan, which was attached before.
 * Refuses `invalid`, `not-found`, `not-allowed`, `late-reason-missing`, `entered-in-future`, and for a copy `observer-not-allowed` and `scan-missing`.
 */
export const recordPoint = factCommand({
  kind: 'recorded',
  on: 'repair',
  act: (body) => recordActOf(body.record.type),
  observation: true,
  observer: copyFaults,
  check: copyBarrier,
})
