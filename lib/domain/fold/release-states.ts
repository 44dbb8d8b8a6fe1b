import type { FactOf } from '../facts/fact-kinds'
import type { PlanPoint } from '../plan'
import type { Party } from '../roles'
import type { PointNo } from '../specification'
import type { Moment } from '../time'
import { instantOf } from '../time'
import type { AttemptSlot } from './attempt-slots'
import type { Fall } from './fall'
import { ofKind } from './order-facts'
import { blindFall, type ReleaseFall } from './release-fall'
import type { RelyingStep } from './relying-step'
import type { RepairGround } from './repair-ground'
import type { ReleaseState } from './repair-state'
import { isAtOrBefore } from './work-span'

export type ReleaseHistory = { fact: FactOf<'released'>; falls: ReleaseFall[] }

/** Parties that must release a point. */
export function holdParties(plan: PlanPoint): Party[] {
  return (['crew', 'inspector', 'client', 'engineer'] as const).filter((party) => plan.participation[party] === 'H')
}

/** Everything that befell each release of an attempt, by time. A partial fall of a named area is healed by a later release of that area. */
export function releaseHistories(ground: RepairGround, slot: AttemptSlot, falls: readonly Fall[]): ReleaseHistory[] {
  const releases = ofKind(slot.facts, 'released')
  const withdrawals = ofKind(ground.own, 'release-withdrawn')
  return releases.map((fact) => {
    const list: ReleaseFall[] = []
    for (const one of withdrawals.filter((withdrawn) => withdrawn.body.release === fact.id)) {
      list.push({
        at: one.observedAt,
        cause: `${one.body.cause}: ${one.body.reason}`,
        by: one.observedBy,
        fact: one.id,
        name: 'withdrawn',
        timed: false,
        event: null,
      })
    }
    const blind = blindFall(ground, fact)
    if (blind) list.push(blind)
    for (const fall of falls.filter(
      (one) => one.no === slot.no && isAfter(one.at, fact.observedAt) && !isClosedAt(slot, one.at),
    )) {
      const { area } = fall
      if (
        area !== null &&
        releases.some(
          (one) =>
            isAfter(one.observedAt, fall.at) &&
            (one.body.scope.kind === 'whole' || (one.body.scope.kind === 'area' && one.body.scope.area === area)),
        )
      )
        continue
      if (fall.event === null && fall.fact !== null && isPermitRenewed(slot, fall, fact)) continue
      if (fall.effect === 'in question' && isDecided(ground, slot, fall)) continue
      list.push({
        at: fall.at,
        cause: area === null ? fall.cause : `${fall.cause} (${area} only)`,
        by: fall.by,
        fact: fall.fact,
        name: fall.effect,
        timed: fall.timed,
        event: fall.event,
      })
    }
    const again = releases.find(
      (one) => isAfter(one.observedAt, fact.observedAt) && one.body.party === fact.body.party && isSameScope(one, fact),
    )
    if (again)
      list.push({
        at: again.observedAt,
        cause: 'Released again',
        by: again.observedBy,
        fact: again.id,
        name: 'superseded',
        timed: false,
        event: null,
      })
    if (slot.closedAt !== null)
      list.push({
        at: slot.closedAt,
        cause: 'A later attempt was opened',
        by: null,
        fact: null,
        name: 'superseded',
        timed: false,
        event: null,
      })
    return { fact, falls: list.sort((a, b) => instantOf(a.at) - instantOf(b.at)) }
  })
}

function isAfter(a: Moment, b: Moment): boolean {
  return instantOf(a) > instantOf(b)
}

function isClosedAt(slot: AttemptSlot, at: Moment): boolean {
  return slot.closedAt !== null && isAtOrBefore(slot.closedAt, at)
}

function isSameScope(a: FactOf<'released'>, b: FactOf<'released'>): boolean {
  return JSON.stringify(a.body.scope) === JSON.stringify(b.body.scope) || a.body.scope.kind === 'whole'
}

/** A permit that ended does not touch a release given on a later permit. */
function isPermitRenewed(slot: AttemptSlot, fall: Fall, release: FactOf<'released'>): boolean {
  return slot.governing.some(
    (one) =>
      one.record.type === 'permit' &&
      one.fact.id !== fall.fact &&
      isAfter(one.record.validTo, fall.at) &&
      isAtOrBefore(one.fact.observedAt, release.observedAt),
  )
}

/** A person decided what a doubtful event means for this attempt. */
function isDecided(ground: RepairGround, slot: AttemptSlot, fall: Fall): boolean {
  return ofKind(ground.own, 'impact-decided').some(
    (one) =>
      one.body.cause === fall.fact && one.body.points.some((at) => at.point === slot.no && at.attempt === slot.attempt),
  )
}

/** Whether a release was in force at a moment: given by then and not fallen. */
export function heldAt(history: ReleaseHistory, at: Moment): boolean {
  return isAtOrBefore(history.fact.observedAt, at) && !history.falls.some((fall) => isAtOrBefore(fall.at, at))
}

/** Whether a scope reaches a later point. `unknown` for an area whose marks or step are not given as data. */
export function scopeCovers(
  scope: FactOf<'released'>['body']['scope'],
  later: PointNo,
  marks: readonly string[] = [],
): 'yes' | 'no' | 'unknown' {
  if (scope.kind === 'whole') return 'yes'
  if (scope.kind === 'up-to-step')
    return scope.untilPoint === undefined ? 'unknown' : later < scope.untilPoint ? 'yes' : 'no'
  const within = scope.marks
  if (!within || marks.length === 0) return 'unknown'
  return marks.every((mark) => within.includes(mark)) ? 'yes' : 'no'
}

/**
 * State of a release. Used once its relying step is done and it was in force when that step began: later falls then leave it, but for a withdrawal,
 * and for damage or a weep at what the acceptance relied on. `doubt` is an undecided question about the attempt.
 */
export function releaseState(
  history: ReleaseHistory,
  step: RelyingStep | null,
  doubt: { at: Moment; cause: string; fact: Fall['fact'] } | null,
): Omit<ReleaseState, 'receivedAfterUse'> {
  const used = step !== null && isAtOrBefore(history.fact.observedAt, step.from)
  const touches = (fall: ReleaseFall): boolean => {
    if (!used || fall.name === 'withdrawn') return true
    if (isAtOrBefore(fall.at, step.from)) return true
    if (fall.timed || fall.name === 'superseded') return false
    if (step.kind === 'acceptance') return fall.event === 'damage' || fall.event === 'weep'
    return isAtOrBefore(fall.at, step.to)
  }
  const standing = history.falls.filter(touches)
  const fall =
    standing.find((one) => one.name === 'withdrawn') ??
    standing.find((one) => one.name !== 'in question') ??
    standing[0]
  if (fall && fall.name !== 'in question')
    return {
      fact: history.fact,
      state: fall.name,
      fell: { at: fall.at, cause: fall.cause, by: fall.by, fact: fall.fact },
    }
  const question = fall ?? (doubt && { ...doubt, by: null })
  if (question)
    return {
      fact: history.fact,
      state: 'in question',
      fell: { at: question.at, cause: question.cause, by: question.by, fact: question.fact },
    }
  return { fact: history.fact, state: used ? 'used' : 'valid', fell: null }
}
