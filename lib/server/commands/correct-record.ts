import { mayCorrect } from '@/lib/domain/fold/may-correct'
import { factCommand } from './fact-command'

/**
 * Correct one's own error in what was keyed, with the reason; the old value stays readable and signatures over it break. A second measurement is a new
 * record, never a correction. Refuses `not-found`, `not-own-entry`, `value-moved` when a `from` is not the present value, `invalid` when the result is
 * no record, and as every fact command.
 */
export const correctRecord = factCommand({
  kind: 'corrected',
  on: 'repair',
  act: 'correct own entry',
  check: async (desk, { stream }, { body }) => {
    const state = await desk.stateOf(stream)
    if (!state) return { code: 'not-found' }
    const allowed = mayCorrect(state, body, desk.actor.person)
    if (allowed.ok) return null
    switch (allowed.error.code) {
      case 'target-unknown':
        return { code: 'not-found' }
      case 'not-own-entry':
        return { code: 'not-own-entry' }
      case 'from-differs':
        return { code: 'value-moved', path: allowed.error.path }
      case 'path-missing':
        return { code: 'invalid', fields: { [allowed.error.path]: ['no such place in the record'] } }
      case 'not-a-record':
        return { code: 'invalid', fields: { [allowed.error.path]: ['the result is no such record'] } }
    }
  },
})
