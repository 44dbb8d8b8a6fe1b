import type { StreamId } from '../facts/fact'
import type { BodyOf, Fact, FactOf } from '../facts/fact-kinds'
import type { Party } from '../roles'
import type { Moment } from '../time'
import type { NonconformanceState } from './nonconformance-state'
import { ofKind, ofStream, orderFacts } from './order-facts'

export type Disposition = BodyOf<'disposition-proposed'>['disposition']

/** Parties whose approval each disposition needs. */
export const APPROVALS_OF_DISPOSITION: Record<Disposition, readonly Party[]> = {
  rework: ['inspector'],
  repair: ['engineer', 'client'],
  replace: ['engineer'],
  'use as is': ['engineer', 'client'],
  'return or scrap': ['inspector'],
  'no effect': ['engineer'],
}

type StateName = NonconformanceState['state']
const STATE_AFTER: Partial<Record<Fact['kind'], StateName>> = {
  contained: 'contained',
  assessed: 'assessed',
  'disposition-proposed': 'disposition proposed',
  'disposition-rejected': 'assessed',
  'action-started': 'action in progress',
  'action-done': 'action in progress',
  verified: 'verified',
  closed: 'closed',
  reopened: 'reopened',
  'not-a-nonconformance': 'rejected',
  'voided-duplicate': 'voided duplicate',
}
const ENDED: readonly StateName[] = ['closed', 'rejected', 'voided duplicate']

/** A nonconformance as its stream tells at `asOf`, or null when it was never raised. Approvals count for the latest proposal only. */
export function foldNonconformance(facts: readonly Fact[], stream: StreamId, asOf: Moment): NonconformanceState | null {
  const own = ofStream(orderFacts(facts, asOf), stream)
  const raised = ofKind(own, 'nonconformance-raised')[0]
  if (!raised) return null
  let state: StateName = 'raised'
  let proposal: FactOf<'disposition-proposed'> | null = null
  let approvals: FactOf<'disposition-approved'>[] = []
  let needsApproval: Party[] = []
  for (const fact of own) {
    state = STATE_AFTER[fact.kind] ?? state
    if (fact.kind === 'disposition-proposed') {
      proposal = fact
      approvals = []
      needsApproval = [...APPROVALS_OF_DISPOSITION[fact.body.disposition]]
    } else if (fact.kind === 'disposition-approved' && fact.body.proposal === proposal?.id) {
      approvals.push(fact)
      needsApproval = needsApproval.filter((party) => party !== fact.body.party)
      if (needsApproval.length === 0 && state === 'disposition proposed') state = 'disposition approved'
    } else if (fact.kind === 'disposition-rejected' || fact.kind === 'reopened') {
      proposal = null
      approvals = []
      needsApproval = []
    }
  }
  const done = new Map(ofKind(own, 'corrective-action-done').map((fact) => [fact.body.action, fact]))
  const isOpen = !ENDED.includes(state)
  const saysNoBlock = new Set(ofKind(own, 'does-not-block').map((fact) => fact.body.party))
  return {
    stream,
    number: raised.body.number,
    raised,
    state,
    facts: own,
    proposal,
    approvals,
    needsApproval,
    actions: ofKind(own, 'corrective-action').map((fact) => ({ fact, done: done.get(fact.id) ?? null })),
    isOpen,
    blocksAcceptance: isOpen && !(saysNoBlock.has('engineer') && saysNoBlock.has('client')),
  }
}

/** Attempts whose departure an approved disposition concedes ("repair" and "use as is"), as `point/attempt`. The results stay as they are. */
export function concededBy(state: NonconformanceState): string[] {
  if (!state.proposal || state.needsApproval.length > 0) return []
  if (state.state === 'rejected' || state.state === 'voided duplicate') return []
  const { disposition, conceded = [] } = state.proposal.body
  return disposition === 'repair' || disposition === 'use as is'
    ? conceded.map((one) => `${one.point}/${one.attempt}`)
    : []
}
