import { factCommand } from './fact-command'

/**
 * Open a repair in a project under a specification and a plan: `{ stream: 'repair:NUMBER', body, ...Entry }`. Refuses `exists-already`, `not-found` when the
 * project, specification or plan is not there, `not-decided` when one of them has no issued revision, and those of every fact command.
 */
export const openRepair = factCommand({
  kind: 'repair-opened',
  on: 'repair',
  act: 'open repair',
  opens: true,
  check: async (desk, _subject, fact) => {
    for (const [stream, kind] of [
      [fact.body.specification, 'specification-issued'],
      [fact.body.plan, 'plan-issued'],
    ] as const) {
      const facts = await desk.factsOf(stream)
      if (!facts) return { code: 'not-found' }
      if (!facts.some((one) => one.kind === kind)) return { code: 'not-decided', why: 'not-issued', detail: [stream] }
    }
    return null
  },
})
