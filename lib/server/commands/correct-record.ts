import { applyCorrection } from '@/lib/domain/fold/apply-correction'
import { effectiveRecords } from '@/lib/domain/fold/effective-records'
import { orderFacts } from '@/lib/domain/fold/order-facts'
import { factCommand } from './fact-command'

/**
 * Correct one's own error in what was keyed, with the reason; the old value stays readable and signatures over it break. A second measurement is a new
 * record, never a correction. Refuses `not-found`, `not-own-entry`, `value-moved` when a `from` is not the present value, `invalid` when the result is
 * no record, and as every fact command.
 */
export const correctRecord = factCommand({
  kind: 'corrected', on: 'repair', act: 'correct own entry',
  check: async (desk, { facts, place }, { body }) => {
    const { records } = effectiveRecords(orderFacts(facts, desk.now(place.offset)))
    const target = records.find((one) => one.fact.id === body.target)
    if (!target) return { code: 'not-found' }
    if (target.fact.enteredBy !== desk.actor.person && target.fact.observedBy !== desk.actor.person) return { code: 'not-own-entry' }
    const applied = applyCorrection(target.record, body.changes)
    if (applied.ok) return null
    const { code, path } = applied.refusal
    return code === 'from-differs' ? { code: 'value-moved', path } : { code: 'invalid', fields: { [path]: [code === 'path-missing' ? 'no such place in the record' : 'the result is no such record'] } }
  },
})
