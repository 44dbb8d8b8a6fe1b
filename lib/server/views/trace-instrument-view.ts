import { type FactId, StreamId } from '@/lib/domain/facts/fact'
import type { RepairState } from '@/lib/domain/fold/repair-state'
import { dayOf, type Moment } from '@/lib/domain/time'
import { type Period, traceInstrument } from '@/lib/domain/trace/trace-instrument'
import { loadStream } from '@/lib/server/store/load-stream'
import type { Store, TenantId } from '@/lib/server/store/store'
import { type InstrumentStanding, instrumentStanding } from './instrument-words'
import { loadTraceGround } from './trace-ground'
import { type ImpactView, loadImpactView } from './trace-impact-view'
import { type TraceUseLine, traceUseLine } from './trace-use-line'

export type InstrumentUseLine = TraceUseLine & {
  certificate: string | null
  certificateTo: string | null
  found: string[]
}
export type TraceInstrumentView = {
  instrument: StreamId
  number: string
  kind: string
  standing: InstrumentStanding
  asOf: Moment
  period: Period
  uses: InstrumentUseLine[]
  causes: { fact: FactId; at: Moment; words: string }[]
  impact: ImpactView | null
}

/**
 * An instrument's readings in a period, each with the certificate valid then; and the impact search of one time it was found wrong (the latest unless
 * another is named). Plain data. Null when it was never registered.
 */
export async function traceInstrumentView(
  store: Store,
  tenant: TenantId,
  name: string,
  period: Period,
  cause?: FactId,
): Promise<TraceInstrumentView | null> {
  const stream = StreamId.safeParse(`instrument:${name}`)
  if (!stream.success) return null
  const { facts } = await loadStream(store, tenant, stream.data)
  if (facts.length === 0) return null
  const ground = await loadTraceGround(store, tenant, stream.data)
  const trace = traceInstrument(facts, stream.data, ground.uses, ground.repairs, period, ground.asOf)
  if (!trace) return null
  const causes = trace.instrument.foundWrong
  const asked = causes.find((one) => one.id === cause) ?? causes.at(-1)
  return {
    instrument: stream.data,
    number: trace.instrument.number,
    kind: trace.instrument.kind,
    standing: instrumentStanding(trace.instrument, dayOf(ground.asOf)),
    asOf: ground.asOf,
    period,
    uses: trace.rows.map((row) => ({
      ...traceUseLine(row, ground.states),
      certificate: row.certificate?.body.certificate ?? null,
      certificateTo: row.certificate?.body.dueOn ?? null,
      found: foundOf(ground.states.get(row.repair), row.point, row.attempt, row.fact),
    })),
    causes: causes.map((one) => ({ fact: one.id, at: one.observedAt, words: one.body.how })),
    impact: asked ? await loadImpactView(store, tenant, asked, facts, ground) : null,
  }
}

function foundOf(state: RepairState | undefined, no: string, attemptNo: number, fact: FactId): string[] {
  const attempt = state?.points.find((one) => one.no === no)?.attempts.find((one) => one.attempt === attemptNo)
  if (!attempt?.records.some((one) => one.fact.id === fact)) return []
  return attempt.criteria
    .filter((one) => one.figures.worst !== undefined || one.figures.mean !== undefined)
    .map((one) => `${one.criterion.title}: ${one.found}`)
}
