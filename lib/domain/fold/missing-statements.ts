import type { StreamId } from '../facts/fact'
import type { RecordOf } from '../records/record'
import type { PointNo } from '../specification'
import { instantOf } from '../time'
import type { AttemptSlot, PointSlots } from './attempt-slots'
import { inForceFrom } from './fold-revisions'
import { ofKind } from './order-facts'
import type { RepairGround } from './repair-ground'

type Revised = { of: StreamId; revision: number; from: number; title: string; spares: ReadonlySet<PointNo> }

/**
 * Performed points for which the engineer has not said "stands" or "redo" after a revision of specification, plan or design that came into force
 * before the acceptance. For the design sheet `of` is the repair's own stream.
 */
export function missingStatements(
  ground: RepairGround,
  points: readonly PointSlots[],
): { point: PointNo; text: string }[] {
  const statements = ofKind(ground.own, 'stands-or-redo')
  const until = instantOf(ground.openUntil)
  return revised(ground)
    .filter((one) => one.from <= until)
    .flatMap((revision) =>
      points.flatMap((point) => {
        const isStated = statements.some(
          (one) => one.body.point === point.no && one.body.of === revision.of && one.body.revision >= revision.revision,
        )
        if (
          isStated ||
          revision.spares.has(point.no) ||
          !isPerformed(point.attempts.at(-1) ?? point.attempts[0], revision.from)
        )
          return []
        return [
          { point: point.no, text: `Performed before ${revision.title}: the engineer has not said whether it stands.` },
        ]
      }),
    )
}

function isPerformed(slot: AttemptSlot, before: number): boolean {
  return (
    slot.workTo !== null &&
    instantOf(slot.workTo) < before &&
    !slot.facts.some((fact) => fact.kind === 'marked-not-applicable')
  )
}

function revised(ground: RepairGround): Revised[] {
  const later = [...ground.specifications.slice(1), ...ground.plans.slice(1)].map(
    (one): Revised => ({
      of: one.stream,
      revision: one.body.revision,
      from: inForceFrom(one),
      title: `revision ${one.body.revision} of ${one.stream.slice(one.stream.indexOf(':') + 1)}`,
      spares: new Set(),
    }),
  )
  const sheets = ground.records.flatMap((one) =>
    one.overruledBy === null && one.record.type === 'design' ? [{ record: one.record as RecordOf<'design'>, one }] : [],
  )
  const first = sheets[0]?.record.revision ?? 0
  const designs = sheets
    .filter(({ record }) => record.revision > first)
    .map(
      ({ record, one }): Revised => ({
        of: ground.stream,
        revision: record.revision,
        from: instantOf(one.fact.observedAt),
        title: `design sheet ${record.sheetNo} revision ${record.revision}`,
        spares: new Set([one.point]),
      }),
    )
  return [...later, ...designs]
}
