import { nonconformanceAct } from './nonconformance-act'

/** Verify that the action did what it should: by someone who did not do it. Refusals: those of `nonconformanceAct`. */
export const verifyNonconformance = nonconformanceAct('verified', () => ({ kind: 'verified' }))
