import { type Decimal, showDecimal } from '../decimal'
import { type CalendarDay, dayOf, instantOf } from '../time'
import { addYears, smallerDecimal } from './calendar'
import { ofKind } from './order-facts'
import type { RepairGround } from './repair-ground'
import type { AcceptanceState } from './repair-state'
import { signatureStates } from './signature-states'

/**
 * The acceptance with its life. A review by the engineer states life and next inspection anew; the limits of an approved disposition may shorten
 * both and never lengthen them. Overdue once the day has passed without an in-service record on or after it.
 */
export function acceptanceState(ground: RepairGround): AcceptanceState | null {
  const fact = ground.accepted
  if (!fact) return null
  const signed = ofKind(ground.own, 'signed').filter(
    (one) => one.body.covers.some((cover) => cover.fact === fact.id) || one.body.meaning === 'accepted',
  )
  const reviewed = ofKind(ground.own, 'life-reviewed')
    .filter((one) => instantOf(one.observedAt) >= instantOf(fact.observedAt))
    .at(-1)
  const limits = ground.nonconformances.flatMap((ncr) => {
    const last = ncr.approvals.at(-1)
    const given = ncr.proposal?.body.limits
    return last &&
      given &&
      ncr.needsApproval.length === 0 &&
      (!reviewed || instantOf(last.observedAt) > instantOf(reviewed.observedAt))
      ? [given]
      : []
  })
  const lifeYears = limits.reduce<Decimal>(
    (life, one) => (one.lifeYears ? smallerDecimal(life, one.lifeYears) : life),
    reviewed?.body.lifeYears ?? fact.body.lifeYears,
  )
  const nextInspectionOn = limits.reduce<CalendarDay>(
    (day, one) => (one.nextInspectionOn && one.nextInspectionOn < day ? one.nextInspectionOn : day),
    reviewed?.body.nextInspectionOn ?? fact.body.nextInspectionOn,
  )
  const discharged = new Set(
    ofKind(ground.own, 'condition-discharged')
      .filter((one) => one.body.acceptance === fact.id)
      .map((one) => one.body.condition),
  )
  return {
    fact,
    signatures: signatureStates(ground, signed),
    lifeYears: showDecimal(lifeYears),
    lifeEndsOn: addYears(fact.body.lifeFrom, lifeYears),
    nextInspectionOn,
    isOverdue: nextInspectionOn < dayOf(ground.asOf) && !inspections(ground).some((day) => day >= nextInspectionOn),
    openConditions: fact.body.conditions.filter((_, at) => !discharged.has(at)),
  }
}

function inspections(ground: RepairGround): CalendarDay[] {
  return ground.records.flatMap((one) =>
    one.overruledBy === null && one.record.type === 'in-service' ? [one.record.inspectedOn] : [],
  )
}
