import { streamName } from '@/lib/domain/facts/fact'
import { blockOf, NUMBERS_STREAM, numberAt, numberBlocks } from '@/lib/domain/numbers/number-blocks'
import type { Command } from './command'
import { factCommand } from './fact-command'

/** Numbers may be allotted between the look and the opening; then it is looked at again. */
const TRIES_AT_MOST = 20

const openOnce = factCommand({
  kind: 'repair-opened',
  on: 'repair',
  act: 'open repair',
  opens: true,
  beside: [NUMBERS_STREAM],
  check: async (desk, _subject, fact) => {
    const block = blockOf(numberBlocks((await desk.factsOf(NUMBERS_STREAM)) ?? []), streamName(fact.stream))
    if (block && block.device !== `device:${fact.device.id}`)
      return {
        code: 'number-allotted-elsewhere',
        number: streamName(fact.stream),
        from: numberAt(block, block.from),
        to: numberAt(block, block.to),
      }
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

/**
 * Open a repair in a project under a specification and a plan: `{ stream: 'repair:NUMBER', body, ...Entry }`. Refuses `exists-already`, `number-allotted-elsewhere` when the number lies in the block
 * of another device than the entry names, `not-found` when the project, specification or plan is not there, `not-decided` when one of them has no issued revision, and those of every fact command.
 */
export const openRepair: Command = async (actor, input) => {
  for (let tries = 1; ; tries += 1) {
    const kept = await openOnce(actor, input)
    const isOfNumbers =
      !kept.ok && kept.error.code === 'heads-moved' && kept.error.moved.every((one) => one.stream === NUMBERS_STREAM)
    if (!isOfNumbers || tries === TRIES_AT_MOST) return kept
  }
}
