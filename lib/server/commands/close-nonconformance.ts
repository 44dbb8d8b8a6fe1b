import { nonconformanceAct } from './nonconformance-act'

/** Close a verified nonconformance: not by who did the work. Refusals: those of `nonconformanceAct`. */
export const closeNonconformance = nonconformanceAct('closed', () => ({ kind: 'closed' }))
