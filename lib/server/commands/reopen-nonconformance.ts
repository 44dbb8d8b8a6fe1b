import { nonconformanceAct } from './nonconformance-act'

/** Reopen a closed, rejected or verified nonconformance, with the reason. Refusals: those of `nonconformanceAct`. */
export const reopenNonconformance = nonconformanceAct('reopened', () => ({ kind: 'reopened' }))
