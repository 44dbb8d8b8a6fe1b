import { nonconformanceAct } from './nonconformance-act'

/** Name a corrective action with its owner and due day. Refusals: those of `nonconformanceAct`. */
export const nameCorrectiveAction = nonconformanceAct('corrective-action', () => ({ kind: 'corrective-action' }))
