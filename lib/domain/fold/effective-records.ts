import type { FactId } from '../facts/fact'
import type { Fact, FactOf } from '../facts/fact-kinds'
import type { PointRecord } from '../records/record'
import type { PointNo } from '../specification'
import { minutesBetween } from '../time'
import { applyCorrection, type CorrectionRefusal } from './apply-correction'
import { ofKind } from './order-facts'

/** A record after its corrections, with those that could not be applied kept beside it. */
export type EffectiveRecord = {
  fact: FactOf<'recorded'>
  point: PointNo
  attempt: number
  record: PointRecord
  corrections: FactOf<'corrected'>[]
  overruledBy: FactId | null
  late: boolean
}
export type UnappliedCorrection = {
  fact: FactOf<'corrected'>
  why: CorrectionRefusal['code'] | 'target-missing'
  path: string
}

/**
 * Every record of a repair as it stands: corrections applied in observed order, "this record governs" applied after them.
 * @param facts the repair's own facts in fold order
 * @param lateAfterMinutes an entry this many minutes after the event counts as late even when nobody said so
 */
export function effectiveRecords(
  facts: readonly Fact[],
  lateAfterMinutes?: number,
): { records: EffectiveRecord[]; unapplied: UnappliedCorrection[] } {
  const records = ofKind(facts, 'recorded').map(
    (fact): EffectiveRecord => ({
      fact,
      point: fact.body.point,
      attempt: fact.body.attempt,
      record: fact.body.record,
      corrections: [],
      overruledBy: null,
      late: isLate(fact, lateAfterMinutes),
    }),
  )
  const byId = new Map(records.map((one) => [one.fact.id, one]))
  const unapplied: UnappliedCorrection[] = []
  for (const correction of ofKind(facts, 'corrected')) {
    const target = byId.get(correction.body.target)
    if (!target) {
      unapplied.push({ fact: correction, why: 'target-missing', path: '' })
      continue
    }
    const applied = applyCorrection(target.record, correction.body.changes)
    if (applied.ok) {
      target.record = applied.record
      target.corrections.push(correction)
    } else unapplied.push({ fact: correction, why: applied.refusal.code, path: applied.refusal.path })
  }
  for (const choice of ofKind(facts, 'governs-chosen')) {
    const chosen = byId.get(choice.body.record)
    if (!chosen) continue
    chosen.overruledBy = null
    for (const id of choice.body.over) {
      const other = byId.get(id)
      if (other && other !== chosen) other.overruledBy = chosen.fact.id
    }
  }
  return { records, unapplied }
}

/** Whether a fact was keyed late: it says so, or more minutes passed between event and entry than allowed. */
export function isLate(fact: Pick<Fact, 'late' | 'observedAt' | 'enteredAt'>, lateAfterMinutes?: number): boolean {
  return (
    fact.late !== undefined ||
    (lateAfterMinutes !== undefined && minutesBetween(fact.observedAt, fact.enteredAt) > lateAfterMinutes)
  )
}
