import type { StreamId } from '../facts/fact'
import type { Fact, FactOf } from '../facts/fact-kinds'
import type { Party } from '../roles'

/** States of a nonconformance, in the order in which they usually follow. */
export const NONCONFORMANCE_STATES = [
  'raised',
  'contained',
  'assessed',
  'disposition proposed',
  'disposition approved',
  'action in progress',
  'verified',
  'closed',
  'rejected',
  'reopened',
  'voided duplicate',
] as const

/** A nonconformance as its stream tells. */
export type NonconformanceState = {
  stream: StreamId
  number: string
  raised: FactOf<'nonconformance-raised'>
  state: (typeof NONCONFORMANCE_STATES)[number]
  facts: Fact[]
  proposal: FactOf<'disposition-proposed'> | null
  approvals: FactOf<'disposition-approved'>[]
  /** Parties whose approval the disposition still needs. */
  needsApproval: Party[]
  actions: { fact: FactOf<'corrective-action'>; done: FactOf<'corrective-action-done'> | null }[]
  isOpen: boolean
  /** Blocks acceptance while open, unless engineer and client approved otherwise. */
  blocksAcceptance: boolean
}
