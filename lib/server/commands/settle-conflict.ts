import { ofKind } from '@/lib/domain/fold/order-facts'
import { factCommand } from './fact-command'

/**
 * Rule about a conflict that a sync noted, with the reason: a release given without a network stands or falls; `seen` where nothing had been applied. Refuses `not-found` for a conflict that is not of
 * this repair, `not-decided` (`ruling-does-not-fit`, `ruled-already`), and as every fact command.
 */
export const settleConflict = factCommand({
  kind: 'conflict-settled',
  on: 'repair',
  act: 'choose governing record',
  check: async (desk, { stream, facts }, { body }) => {
    const state = await desk.stateOf(stream)
    const conflict = state?.conflicts.find((one) => one.noted === body.conflict)
    if (!conflict) return { code: 'not-found' }
    if (ofKind(facts, 'conflict-settled').some((one) => one.body.conflict === body.conflict))
      return { code: 'not-decided', why: 'ruled-already', detail: [] }
    return (conflict.decision === null) === (body.ruling === 'seen')
      ? null
      : { code: 'not-decided', why: 'ruling-does-not-fit', detail: [body.ruling] }
  },
})
