import { nonconformanceAct } from './nonconformance-act'

/** Void a nonconformance as a duplicate of another; its number is never used again. Refuses `not-found` when the other is not there or is itself, and as `nonconformanceAct`. */
export const voidDuplicate = nonconformanceAct(
  'voided-duplicate',
  () => ({ kind: 'voided-duplicate' }),
  async (desk, { stream }, { body }) =>
    body.of !== stream && (await desk.factsOf(body.of)) ? null : { code: 'not-found' },
)
