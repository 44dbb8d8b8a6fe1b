import { nonconformanceAct } from './nonconformance-act'

/** Propose a disposition; a later proposal takes the place of an earlier one. Refusals: those of `nonconformanceAct`. */
export const proposeDisposition = nonconformanceAct('disposition-proposed', ({ disposition }) => ({
  kind: 'disposition-proposed',
  disposition,
}))
