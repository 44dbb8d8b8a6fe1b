import { nonconformanceAct } from './nonconformance-act'

/** Agree, for engineer or client, that an open nonconformance does not block acceptance; it takes both. Refusals: those of `nonconformanceAct`. */
export const agreeDoesNotBlock = nonconformanceAct('does-not-block', ({ party }) => ({ kind: 'does-not-block', party }))
