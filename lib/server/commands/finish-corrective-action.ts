import { nonconformanceAct } from './nonconformance-act'

/** Record that a corrective action is done, with its evidence. Refuses `not-found` for an action that was not named, and as `nonconformanceAct`. */
export const finishCorrectiveAction = nonconformanceAct(
  'corrective-action-done',
  () => ({ kind: 'corrective-action-done' }),
  async (_desk, { facts }, { body }) =>
    facts.some((one) => one.kind === 'corrective-action' && one.id === body.action) ? null : { code: 'not-found' },
)
