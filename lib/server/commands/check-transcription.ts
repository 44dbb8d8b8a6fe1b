import { mayCheckTranscription } from '@/lib/domain/fold/transcription-states'
import { RECORD_TITLES } from '@/lib/domain/records/record-titles'
import { factCommand } from './fact-command'

/**
 * Say that a transcribed record agrees with its paper, or what differs: `{ stream, body: { point, attempt, record, corrections, result, remark? }, ...Entry }`, where `corrections` are those that
 * were seen. Refuses `own-transcription` for who entered or corrected it, `value-moved` when it was corrected meanwhile, `not-found`, and as every fact command.
 */
export const checkTranscription = factCommand({
  kind: 'transcription-checked',
  on: 'repair',
  act: 'check transcription',
  check: async (desk, { stream }, { body }) => {
    const state = await desk.stateOf(stream)
    const copy = state?.points
      .find((one) => one.no === body.point)
      ?.attempts.find((one) => one.attempt === body.attempt)
      ?.records.find((one) => one.fact.id === body.record)
    if (!copy) return { code: 'not-found' }
    const allowed = mayCheckTranscription(copy, body.corrections, desk.actor.person)
    if (allowed.ok) return null
    switch (allowed.error.code) {
      case 'not-transcribed':
        return { code: 'invalid', fields: { 'body.record': ['this record was not transcribed from paper'] } }
      case 'own-transcription':
        return { code: 'own-transcription' }
      case 'corrections-moved':
        return { code: 'value-moved', path: RECORD_TITLES[copy.record.type] ?? copy.record.type }
    }
  },
})
