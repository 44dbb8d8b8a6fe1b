import { nonconformanceAct } from './nonconformance-act'

/** State that it is no nonconformance, with the reason; it stays listed. The raiser does not. Refusals: those of `nonconformanceAct`. */
export const rejectNonconformance = nonconformanceAct('not-a-nonconformance', () => ({ kind: 'not-a-nonconformance' }))
