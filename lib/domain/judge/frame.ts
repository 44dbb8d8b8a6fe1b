import type { FactId, PersonId } from '../facts/fact'
import type { RecordType } from '../records/record'
import type { Criterion } from '../specification'
import type { Moment } from '../time'
import type { DraftRecord, JudgeContext, JudgedRecord, RecordYield, YieldedReading, YieldedUse } from './judge-context'
import type { DraftOf } from './yield-builder'
import { yieldOf } from './yield-of'

/** A record with what it yields. */
export type Yielded = { judged: JudgedRecord; yields: RecordYield }

/** The records of a context, read once for all criteria of a point. */
export type PointFrame = { context: JudgeContext; own: Yielded[]; others: () => Yielded[] }

/** What one rule judges from. */
export type JudgeFrame = PointFrame & { criterion: Criterion }

/** A reading with the record that it came from. */
export type Taken = YieldedReading & { at: Moment; fact: FactId | null }
/** A use with the record that it came from. */
export type TakenUse = YieldedUse & { fact: FactId | null; record: JudgedRecord }

/** Read the records of a context. Those of other points are read only when a rule asks for them. */
export function frameOf(context: JudgeContext): PointFrame {
  let others: Yielded[] | null = null
  return {
    context,
    own: context.records.map(withYield),
    others: () => {
      others ??= context.otherRecords.map(withYield)
      return others
    },
  }
}

/** What a recorded fact yields never changes, so it is read once; a record being keyed is read every time. */
const READ = new WeakMap<DraftRecord, { observedAt: Moment; observedBy: PersonId; yields: RecordYield }>()

function withYield(judged: JudgedRecord): Yielded {
  const { fact, record, observedAt, observedBy } = judged
  if (fact === null) return { judged, yields: yieldOf(record, observedAt, observedBy) }
  const known = READ.get(record)
  if (known?.observedAt === observedAt && known.observedBy === observedBy) return { judged, yields: known.yields }
  const yields = yieldOf(record, observedAt, observedBy)
  READ.set(record, { observedAt, observedBy, yields })
  return { judged, yields }
}

/** Readings of a quantity in this attempt. */
export function readingsOf(frame: PointFrame, quantity: string): Taken[] {
  return frame.own.flatMap(({ judged, yields }) =>
    yields.readings
      .filter((one) => one.quantity === quantity)
      .map((one) => ({ ...one, at: one.at ?? judged.observedAt, fact: judged.fact })),
  )
}

/** Uses in this attempt that a test picks. */
export function usesOf(frame: PointFrame, picks: (use: YieldedUse) => boolean): TakenUse[] {
  return frame.own.flatMap(({ judged, yields }) =>
    yields.uses.filter(picks).map((use) => ({ ...use, fact: judged.fact, record: judged })),
  )
}

export type TypedRecord<T extends RecordType> = { record: DraftOf<T>; judged: JudgedRecord }

/** Records of one type among some. */
export function recordsOfType<T extends RecordType>(list: readonly JudgedRecord[], type: T): TypedRecord<T>[] {
  return list.flatMap((judged) =>
    judged.record.type === type ? [{ record: judged.record as DraftOf<T>, judged }] : [],
  )
}

/** Fact ids of records, without those still being keyed. */
export function factsOf(list: readonly { fact: FactId | null }[]): FactId[] {
  return [...new Set(list.flatMap((one) => (one.fact ? [one.fact] : [])))]
}

/** The planned count of a quantity at this point: the specification's count criterion; null when it has none. */
export function plannedCount(frame: JudgeFrame, quantity: string): number | null {
  const { criteria } = frame.context.specification.body
  for (const { point, rule } of criteria) {
    if (point === frame.criterion.point && rule.kind === 'count' && rule.quantity === quantity) return rule.atLeast
  }
  return null
}
