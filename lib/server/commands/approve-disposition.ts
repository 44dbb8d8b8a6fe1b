import { nonconformanceAct } from './nonconformance-act'

/** Approve the proposed disposition for one party that it needs. Refusals: those of `nonconformanceAct`. */
export const approveDisposition = nonconformanceAct('disposition-approved', ({ party, proposal }) => ({
  kind: 'disposition-approved',
  party,
  proposal,
}))
