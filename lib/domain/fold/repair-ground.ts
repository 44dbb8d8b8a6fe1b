import { type FactId, type Receipt, type Sha256, type StreamId, streamKind } from '../facts/fact'
import type { Fact, FactOf } from '../facts/fact-kinds'
import type { PointNo } from '../specification'
import { instantOf, type Moment } from '../time'
import { clockErrors } from './clock-errors'
import { type EffectiveRecord, effectiveRecords, type UnappliedCorrection } from './effective-records'
import { foldBatch } from './fold-batch'
import { foldInstrument } from './fold-instrument'
import { concededBy, foldNonconformance } from './fold-nonconformance'
import { foldPerson } from './fold-person'
import { revisionsInOrder } from './fold-revisions'
import type { NonconformanceState } from './nonconformance-state'
import { ofKind, ofStream, orderFacts } from './order-facts'
import type { BatchState, InstrumentState, PersonState } from './store-states'

/** What a fold may be told beside the facts. Receipts feed late marks and the trail, never a verdict. */
export type FoldBeside = {
  lateAfterMinutes?: number
  receipts?: Record<FactId, Receipt>
  likeness?: readonly {
    photo: FactId
    other: { repair: StreamId; fact: FactId; point: PointNo }
    kind: 'exact copy' | 'near copy'
  }[]
  /** Photos that this device captured and the record has not yet, by the point, attempt and demand that they answer. */
  photosToCome?: readonly { point: string; attempt: number; demand: string }[]
  /** Digest of a fact's bytes as stored: a signature whose digest differs is broken. */
  sha256Of?: (fact: FactId) => Sha256 | undefined
}

/** The facts of a repair and of what it cites, ordered and indexed: the ground on which every part of the state is folded. */
export type RepairGround = {
  stream: StreamId
  asOf: Moment
  beside: FoldBeside
  facts: Fact[]
  own: Fact[]
  opened: FactOf<'repair-opened'>
  records: EffectiveRecord[]
  unapplied: UnappliedCorrection[]
  specifications: FactOf<'specification-issued'>[]
  plans: FactOf<'plan-issued'>[]
  batches: Record<StreamId, BatchState>
  instruments: Record<StreamId, InstrumentState>
  persons: Record<StreamId, PersonState>
  nonconformances: NonconformanceState[]
  /** Conceded attempts as `point/attempt`: the nonconformance and when the last approval was given. */
  conceded: Map<string, { stream: StreamId; at: Moment }>
  accepted: FactOf<'accepted'> | null
  /** Known clock error of the device at each fact, milliseconds. */
  clockErrors: Record<FactId, number>
  /** Until when a revision reaches points that are not performed: the acceptance, else `asOf`. */
  openUntil: Moment
}

/**
 * Order and index the facts of a repair.
 * @throws RangeError when no `repair-opened` fact of the stream is among them at `asOf`
 */
export function repairGround(facts: readonly Fact[], stream: StreamId, asOf: Moment, beside: FoldBeside): RepairGround {
  const ordered = orderFacts(facts, asOf)
  const own = ofStream(ordered, stream)
  const opened = ofKind(own, 'repair-opened')[0]
  if (!opened) throw new RangeError(`${stream} was not opened at ${asOf}`)
  const streams = [...new Set(ordered.map((fact) => fact.stream))].sort()
  const foldAll = <S>(
    kind: string,
    fold: (facts: readonly Fact[], one: StreamId, at: Moment) => S | null,
  ): Record<StreamId, S> => {
    const states: Record<StreamId, S> = {}
    for (const one of streams) {
      const state = streamKind(one) === kind ? fold(ofStream(ordered, one), one, asOf) : null
      if (state) states[one] = state
    }
    return states
  }
  const cited = new Set(
    own.flatMap((fact) =>
      fact.kind === 'attempt-opened' && fact.body.nonconformance
        ? [fact.body.nonconformance]
        : fact.kind === 'accepted' && fact.body.concession
          ? [fact.body.concession]
          : [],
    ),
  )
  const nonconformances = Object.values(foldAll('nonconformance', foldNonconformance)).filter(
    (one) => cited.has(one.stream) || one.raised.body.repair === stream || one.raised.body.linked.includes(stream),
  )
  const conceded = new Map<string, { stream: StreamId; at: Moment }>()
  for (const one of nonconformances.filter(
    (ncr) => ncr.raised.body.repair === undefined || ncr.raised.body.repair === stream,
  )) {
    const lastApproval = one.approvals.at(-1)
    for (const key of lastApproval ? concededBy(one) : [])
      conceded.set(key, { stream: one.stream, at: lastApproval?.observedAt ?? asOf })
  }
  const accepted = ofKind(own, 'accepted').at(-1) ?? null
  return {
    stream,
    asOf,
    beside,
    facts: ordered,
    own,
    opened,
    ...effectiveRecords(own, beside.lateAfterMinutes),
    specifications: revisionsInOrder(ofKind(ofStream(ordered, opened.body.specification), 'specification-issued')),
    plans: revisionsInOrder(ofKind(ofStream(ordered, opened.body.plan), 'plan-issued')),
    batches: foldAll('batch', foldBatch),
    instruments: foldAll('instrument', foldInstrument),
    persons: foldAll('person', foldPerson),
    nonconformances: nonconformances.sort(
      (a, b) => instantOf(a.raised.observedAt) - instantOf(b.raised.observedAt) || (a.stream < b.stream ? -1 : 1),
    ),
    conceded,
    accepted,
    clockErrors: clockErrors(ordered, own),
    openUntil: accepted?.observedAt ?? asOf,
  }
}
