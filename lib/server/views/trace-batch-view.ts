import { type FactId, StreamId } from '@/lib/domain/facts/fact'
import type { FactOf } from '@/lib/domain/facts/fact-kinds'
import { ofKind } from '@/lib/domain/fold/order-facts'
import type { RepairState } from '@/lib/domain/fold/repair-state'
import { showReadingUnit } from '@/lib/domain/reading'
import { type CalendarDay, dayOf, type Moment } from '@/lib/domain/time'
import { isRealUse, type MassBalance, traceBatch } from '@/lib/domain/trace/trace-batch'
import { loadFactsOfKind } from '@/lib/server/store/load-facts'
import { loadStream } from '@/lib/server/store/load-stream'
import type { Store, TenantId } from '@/lib/server/store/store'
import { type BatchStanding, batchEvents, batchStanding } from './batch-words'
import type { EventLine } from './trace-event-line'
import { loadTraceGround } from './trace-ground'
import { type TraceUseLine, traceUseLine } from './trace-use-line'

/** A repair that a batch went into: who must hear of a recall, and what was decided. */
export type TracedRepair = {
  repair: StreamId
  number: string
  line: string
  status: string
  registerNo: string | null /** False when it was only looked at or refused there. */
  isUsed: boolean
  attempts: string[]
  isInQuestion: boolean
  receivers: { to: string; how: string; at: Moment; revision: number }[]
  decisions: { at: Moment; decision: string; reason: string; by: string }[]
}
export type TraceBatchView = {
  batch: StreamId
  number: string
  product: string
  role: string
  gtin: string | null
  expiresOn: CalendarDay | null
  certificate: string | null
  standing: BatchStanding
  asOf: Moment
  received: string | null
  balance: MassBalance | null
  uses: TraceUseLine[]
  repairs: TracedRepair[]
  movements: EventLine[]
  recall: { fact: string; at: Moment; reason: string; by: string } | null
  notices: EventLine[]
}

/**
 * A batch followed forward: receipt, issues, every mix, ply and filler in every repair and attempt, the mass balance, recall and notices. Plain data.
 * @param name batch number as its stream names it: `RS-884`
 * @returns null when the batch was never received
 */
export async function traceBatchView(store: Store, tenant: TenantId, name: string): Promise<TraceBatchView | null> {
  const stream = StreamId.safeParse(`batch:${name}`)
  if (!stream.success) return null
  const { facts } = await loadStream(store, tenant, stream.data)
  if (facts.length === 0) return null
  const ground = await loadTraceGround(store, tenant, stream.data)
  const trace = traceBatch(facts, stream.data, ground.uses, ground.repairs, ground.asOf)
  if (!trace) return null
  const { received, number, expiresOn, recalled } = trace.batch
  const uses = trace.uses.map((row) => traceUseLine(row, ground.states))
  const decisions = recalled ? await decisionsOn(store, tenant, recalled.id) : []
  const events = batchEvents(facts, stream.data, ground.names, ground.asOf)
  return {
    batch: stream.data,
    number,
    product: received.product,
    role: received.role,
    gtin: received.gtin ?? null,
    expiresOn,
    certificate: received.certificate ?? null,
    asOf: ground.asOf,
    standing: batchStanding(trace.batch, dayOf(ground.asOf)),
    received: received.quantity ? showReadingUnit(received.quantity) : null,
    balance: trace.balance,
    uses,
    repairs: [...ground.states.values()].map((state) =>
      tracedRepair(
        state,
        uses,
        ground.repairs.find((one) => one.repair === state.stream)?.registerNo ?? null,
        decisions,
        ground.names,
      ),
    ),
    movements: events,
    notices: events.filter((event) => event.title === 'Owner notified'),
    recall: recalled
      ? { fact: recalled.id, at: recalled.observedAt, reason: recalled.body.reason, by: recalled.body.by }
      : null,
  }
}

/** Decisions that were recorded per repair on one cause. */
export async function decisionsOn(store: Store, tenant: TenantId, cause: FactId): Promise<FactOf<'impact-decided'>[]> {
  return ofKind(await loadFactsOfKind(store, tenant, 'impact-decided', 'repair'), 'impact-decided').filter(
    (fact) => fact.body.cause === cause,
  )
}

function tracedRepair(
  state: RepairState,
  uses: readonly TraceUseLine[],
  registerNo: string | null,
  decisions: readonly FactOf<'impact-decided'>[],
  names: Record<string, string>,
): TracedRepair {
  const own = uses.filter((use) => use.repair === state.stream)
  return {
    repair: state.stream,
    number: state.number,
    line: `${state.opened.body.line} ${state.opened.body.lineTitle}`,
    status: state.status,
    registerNo,
    isUsed: own.some(isRealUse),
    attempts: [...new Set(own.map((use) => `${use.point}/${use.attempt}`))],
    isInQuestion: own.some((use) => use.isInQuestion),
    receivers: state.issues.flatMap(({ fact, transmitted }) =>
      transmitted.map((one) => ({ to: one.body.to, how: one.body.how, at: one.body.at, revision: fact.body.revision })),
    ),
    decisions: decisions
      .filter((one) => one.stream === state.stream)
      .map((one) => ({
        at: one.observedAt,
        decision: one.body.decision,
        reason: one.body.reason,
        by: names[one.observedBy] ?? one.observedBy,
      })),
  }
}
