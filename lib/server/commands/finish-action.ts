import { nonconformanceAct } from './nonconformance-act'

/** Record that the approved action was done; who did it does not verify it. Refusals: those of `nonconformanceAct`. */
export const finishAction = nonconformanceAct('action-done', () => ({ kind: 'action-done' }))
