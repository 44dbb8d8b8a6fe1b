import { nonconformanceAct } from './nonconformance-act'

/** Record what was found and its cause. Refusals: those of `nonconformanceAct`. */
export const assessNonconformance = nonconformanceAct('assessed', () => ({ kind: 'assessed' }))
