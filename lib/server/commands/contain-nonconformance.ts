import { nonconformanceAct } from './nonconformance-act'

/** Record the immediate step that stops harm spreading. Refusals: those of `nonconformanceAct`. */
export const containNonconformance = nonconformanceAct('contained', () => ({ kind: 'contained' }))
