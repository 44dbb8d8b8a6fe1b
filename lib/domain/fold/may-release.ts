import type { FactId, PersonId } from '../facts/fact'
import type { Scope } from '../facts/repair-bodies'
import type { VerdictKind } from '../judge/verdict'
import { done, type Result, refused } from '../result'
import type { Party } from '../roles'
import type { PointNo } from '../specification'
import type { Moment } from '../time'
import {
  type AttemptRefusal,
  blockingNonconformances,
  currentAttempt,
  type DecidingActor,
  type NotAllowed,
  passesOf,
  ROLE_OF_PARTY,
} from './decision'
import type { AttemptState, ReleaseStateName, RepairState } from './repair-state'

export type ReleaseRefusal =
  | AttemptRefusal
  | NotAllowed
  | { code: 'not-a-hold'; party: Party }
  | { code: 'not-applicable' }
  | { code: 'already-released'; release: FactId }
  | { code: 'own-work'; person: PersonId }
  | { code: 'passed-without-release'; passed: { at: Moment; point: PointNo }[] }
  | { code: 'blocked'; by: PointNo[] }
  | { code: 'nonconformance-blocks'; numbers: string[] }
  | { code: 'in-question' }
  | { code: 'verdict-not-pass'; verdict: VerdictKind; criteria: string[] }
  | { code: 'incomplete'; missing: string[] }

export type ReleaseAsk = {
  state: RepairState
  point: string
  attempt: number
  party: Party
  actor: DecidingActor
  scope: Scope
  now: Moment
}

const DOING: ReadonlySet<string> = new Set(['placer', 'mixer', 'primer', 'wrapper'])

/**
 * Whether a party may release an attempt of its hold. Crew and inspector never release work they did, unless the plan says so; nobody
 * releases a hold that work went past, nor a client's hold for the client; an unjudged or unfinished record is no pass.
 */
export function mayRelease({
  state,
  point: no,
  attempt,
  party,
  actor,
  scope,
}: ReleaseAsk): Result<true, ReleaseRefusal> {
  const found = currentAttempt(state, no, attempt)
  if ('code' in found) return refused(found)
  const { point, current } = found
  const role = ROLE_OF_PARTY[party]
  if (!actor.roles.includes(role)) return refused({ code: 'not-allowed', needs: [role] })
  if (point.participation[party] !== 'H') return refused({ code: 'not-a-hold', party })
  if (current.notApplicable) return refused({ code: 'not-applicable' })
  const standing = current.releases.find(
    (one) =>
      one.fact.body.party === party &&
      (one.state === 'valid' || one.state === 'used') &&
      (one.fact.body.scope.kind === 'whole' || isSameScope(one.fact.body.scope, scope)),
  )
  if (standing) return refused({ code: 'already-released', release: standing.fact.id })
  if (
    (party === 'crew' || party === 'inspector') &&
    !point.plan.selfRelease &&
    doersOf(state, current).has(actor.person)
  )
    return refused({ code: 'own-work', person: actor.person })
  const passed = [
    ...passesOf(point, current, state),
    ...current.passedWithoutRelease.map((one) => ({ at: one.at, point: one.hold })),
  ]
  if (passed.length > 0 && !current.conceded) return refused({ code: 'passed-without-release', passed })
  if (point.blockedBy.length > 0) return refused({ code: 'blocked', by: point.blockedBy })
  const numbers = blockingNonconformances(state, no)
  if (numbers.length > 0 && !current.conceded) return refused({ code: 'nonconformance-blocks', numbers })
  if (current.questions.some((one) => one.decision === undefined)) return refused({ code: 'in-question' })
  if (current.criteria.length > 0 && current.verdict !== 'pass' && !current.conceded) {
    return refused({
      code: 'verdict-not-pass',
      verdict: current.verdict,
      criteria: current.criteria.filter((one) => one.verdict !== 'pass').map((one) => one.criterion.id),
    })
  }
  return current.missing.length > 0 ? refused({ code: 'incomplete', missing: current.missing }) : done(true)
}

function isSameScope(a: Scope, b: Scope): boolean {
  return (
    a.kind === b.kind &&
    (a.kind !== 'area' || (b.kind === 'area' && a.area === b.area)) &&
    (a.kind !== 'up-to-step' || (b.kind === 'up-to-step' && a.step === b.step))
  )
}

/** Persons who did the work of an attempt: they signed "performed" or are named as mixing, placing, priming or wrapping. Reading an instrument is no doing. */
export function doersOf(state: RepairState, attempt: AttemptState): Set<string> {
  const signed = attempt.signatures
    .filter(({ fact }) => fact.body.meaning === 'performed')
    .map(({ fact }) => fact.observedBy)
  const named = state.uses
    .filter(
      (use) =>
        use.point === attempt.point &&
        use.attempt === attempt.attempt &&
        DOING.has(use.role) &&
        use.of.startsWith('person:'),
    )
    .map((use) => use.of.slice('person:'.length))
  return new Set<string>([...signed, ...named])
}

export type WithdrawRefusal =
  | NotAllowed
  | { code: 'release-unknown' }
  | { code: 'release-fallen'; state: ReleaseStateName }
/** Whether a release may be withdrawn: by whoever may release for its party, or an inspector; one that fell already stays as it fell. */
export function mayWithdraw(state: RepairState, release: FactId, actor: DecidingActor): Result<true, WithdrawRefusal> {
  const found = state.points
    .flatMap((point) => point.attempts.flatMap((one) => one.releases))
    .find((one) => one.fact.id === release)
  if (!found) return refused({ code: 'release-unknown' })
  const role = ROLE_OF_PARTY[found.fact.body.party]
  if (!actor.roles.includes(role) && !actor.roles.includes('inspector'))
    return refused({ code: 'not-allowed', needs: role === 'inspector' ? [role] : [role, 'inspector'] })
  return found.state === 'withdrawn' || found.state === 'superseded'
    ? refused({ code: 'release-fallen', state: found.state })
    : done(true)
}

export type WaiveRefusal =
  | NotAllowed
  | AttemptRefusal
  | { code: 'not-a-right'; party: Party }
  | { code: 'step-done'; at: Moment; point: PointNo }
/** Whether a party may give its hold or witness right at an attempt up: in writing, by its own role, for that point only and before the step. */
export function mayWaive(
  state: RepairState,
  no: string,
  attempt: number,
  party: Party,
  actor: DecidingActor,
): Result<true, WaiveRefusal> {
  const found = currentAttempt(state, no, attempt)
  if ('code' in found) return refused(found)
  const role = ROLE_OF_PARTY[party]
  if (!actor.roles.includes(role)) return refused({ code: 'not-allowed', needs: [role] })
  const code = found.point.participation[party]
  if (code !== 'H' && code !== 'W') return refused({ code: 'not-a-right', party })
  const passed = passesOf(found.point, found.current, state)[0]
  return passed ? refused({ code: 'step-done', ...passed }) : done(true)
}
