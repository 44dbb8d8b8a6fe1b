import { factCommand } from './fact-command'

/** Void a nonconformance as a duplicate of another; its number is never used again. Refuses `not-found` when the other is not there or is itself, and as every fact command. */
export const voidDuplicate = factCommand({
  kind: 'voided-duplicate', on: 'nonconformance', act: 'close nonconformance',
  check: async (desk, { stream }, { body }) => ((await desk.factsOf(body.of)) && body.of !== stream ? null : { code: 'not-found' }),
})
