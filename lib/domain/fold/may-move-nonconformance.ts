import type { PersonId } from '../facts/fact'
import type { FactKind } from '../facts/fact-kinds'
import { done, type Result, refused } from '../result'
import type { Party, Role } from '../roles'
import { type DecidingActor, type NotAllowed, ROLE_OF_PARTY } from './decision'
import type { Disposition } from './fold-nonconformance'
import type { NonconformanceState } from './nonconformance-state'

type StateName = NonconformanceState['state']
type ActKind = Extract<
  FactKind,
  | 'contained'
  | 'assessed'
  | 'disposition-proposed'
  | 'disposition-approved'
  | 'disposition-rejected'
  | 'action-started'
  | 'action-done'
  | 'verified'
  | 'closed'
  | 'reopened'
  | 'not-a-nonconformance'
  | 'voided-duplicate'
  | 'does-not-block'
  | 'corrective-action'
  | 'corrective-action-done'
>
/** An act on a nonconformance: its kind with what decides who may. */
export type NonconformanceAct =
  | { kind: Exclude<ActKind, 'disposition-proposed' | 'disposition-approved' | 'does-not-block'> }
  | { kind: 'disposition-proposed'; disposition: Disposition }
  | { kind: 'disposition-approved'; party: Party; proposal: string }
  | { kind: 'does-not-block'; party: 'engineer' | 'client' }

export type MoveRefusal =
  | NotAllowed
  | { code: 'state-does-not-allow'; state: StateName; follows: StateName[] }
  | { code: 'proposal-stale' }
  | { code: 'approval-not-needed'; needs: Party[] }
  | { code: 'doer-does-not-verify'; person: PersonId }
  | { code: 'second-inspector-needed'; person: PersonId }
  | { code: 'raiser-does-not-reject'; person: PersonId }

/** States that each act may follow. */
const FOLLOWS: Record<ActKind, readonly StateName[]> = {
  contained: ['raised', 'reopened'],
  assessed: ['raised', 'contained', 'reopened'],
  'disposition-proposed': ['assessed', 'disposition proposed'],
  'disposition-approved': ['disposition proposed'],
  'disposition-rejected': ['disposition proposed'],
  'action-started': ['disposition approved'],
  'action-done': ['action in progress'],
  verified: ['disposition approved', 'action in progress'],
  closed: ['verified'],
  reopened: ['closed', 'rejected', 'verified'],
  'not-a-nonconformance': ['raised', 'contained', 'assessed', 'reopened'],
  'voided-duplicate': ['raised', 'contained', 'assessed', 'reopened'],
  'does-not-block': [
    'raised',
    'contained',
    'assessed',
    'disposition proposed',
    'disposition approved',
    'action in progress',
    'verified',
    'reopened',
  ],
  'corrective-action': [
    'raised',
    'contained',
    'assessed',
    'disposition proposed',
    'disposition approved',
    'action in progress',
    'verified',
    'closed',
    'reopened',
  ],
  'corrective-action-done': [
    'raised',
    'contained',
    'assessed',
    'disposition proposed',
    'disposition approved',
    'action in progress',
    'verified',
    'closed',
    'reopened',
  ],
}

export const PROPOSERS_OF_DISPOSITION: Record<Disposition, readonly Role[]> = {
  rework: ['lead', 'inspector'],
  repair: ['engineer'],
  replace: ['inspector', 'engineer'],
  'use as is': ['engineer'],
  'return or scrap': ['stores', 'inspector'],
  'no effect': ['inspector'],
}

const ROLES_OF_ACT: Record<
  Exclude<ActKind, 'disposition-proposed' | 'disposition-approved' | 'does-not-block'>,
  readonly Role[]
> = {
  contained: ['lead', 'inspector', 'engineer', 'stores'],
  assessed: ['inspector', 'engineer'],
  'disposition-rejected': ['inspector', 'client', 'engineer'],
  'action-started': ['technician', 'lead', 'inspector', 'engineer', 'stores'],
  'action-done': ['technician', 'lead', 'inspector', 'engineer', 'stores'],
  verified: ['inspector', 'stores'],
  closed: ['inspector'],
  reopened: ['inspector', 'client', 'engineer'],
  'not-a-nonconformance': ['inspector'],
  'voided-duplicate': ['inspector'],
  'corrective-action': ['inspector', 'engineer'],
  'corrective-action-done': ['lead', 'inspector', 'engineer', 'stores'],
}

/** Whether a person may take a nonconformance on by an act. The doer neither verifies nor closes; nobody deletes; the raiser does not reject the own finding. */
export function mayMoveNonconformance(
  state: NonconformanceState,
  act: NonconformanceAct,
  actor: DecidingActor,
): Result<true, MoveRefusal> {
  const follows = FOLLOWS[act.kind]
  if (!follows.includes(state.state))
    return refused({ code: 'state-does-not-allow', state: state.state, follows: [...follows] })
  const needs = rolesFor(act, state)
  if (!actor.roles.some((role) => needs.includes(role))) return refused({ code: 'not-allowed', needs: [...needs] })
  if (act.kind === 'disposition-approved') {
    if (act.proposal !== state.proposal?.id) return refused({ code: 'proposal-stale' })
    if (!state.needsApproval.includes(act.party))
      return refused({ code: 'approval-not-needed', needs: state.needsApproval })
  }
  if ((act.kind === 'verified' || act.kind === 'closed') && nonconformanceDoers(state).has(actor.person))
    return refused({ code: 'doer-does-not-verify', person: actor.person })
  if (
    act.kind === 'verified' &&
    state.proposal?.body.disposition === 'no effect' &&
    state.proposal.observedBy === actor.person
  )
    return refused({ code: 'second-inspector-needed', person: actor.person })
  if (act.kind === 'not-a-nonconformance' && state.raised.observedBy === actor.person)
    return refused({ code: 'raiser-does-not-reject', person: actor.person })
  return done(true)
}

function rolesFor(act: NonconformanceAct, state: NonconformanceState): readonly Role[] {
  if (act.kind === 'disposition-proposed') return PROPOSERS_OF_DISPOSITION[act.disposition]
  if (act.kind === 'disposition-approved' || act.kind === 'does-not-block') return [ROLE_OF_PARTY[act.party]]
  if (act.kind === 'verified')
    return state.proposal?.body.disposition === 'return or scrap' ? ['stores', 'inspector'] : ['inspector']
  return ROLES_OF_ACT[act.kind]
}

/** Persons who did the work that a disposition asked for. */
export function nonconformanceDoers(state: NonconformanceState): Set<PersonId> {
  return new Set(
    state.facts
      .filter((fact) => fact.kind === 'action-started' || fact.kind === 'action-done')
      .map((fact) => fact.observedBy),
  )
}
