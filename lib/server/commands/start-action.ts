import { nonconformanceAct } from './nonconformance-act'

/** Record that the approved action started. Refusals: those of `nonconformanceAct`. */
export const startAction = nonconformanceAct('action-started', () => ({ kind: 'action-started' }))
