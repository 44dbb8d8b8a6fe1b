import { type FactId, StreamId } from '@/lib/domain/facts/fact'
import type { Fact } from '@/lib/domain/facts/fact-kinds'
import type { RepairState } from '@/lib/domain/fold/repair-state'
import { dayOf, type Moment } from '@/lib/domain/time'
import { type ImpactCause, impactOf } from '@/lib/domain/trace/impact-of'
import { type Period, traceInstrument } from '@/lib/domain/trace/trace-instrument'
import { loadStream } from '@/lib/server/store/load-stream'
import type { Store, TenantId } from '@/lib/server/store/store'
import { type InstrumentStanding, instrumentStanding } from './instrument-words'
import { decisionsOn } from './trace-batch-view'
import { loadTraceGround } from './trace-ground'
import { type TraceUseLine, traceUseLine } from './trace-use-line'

export type InstrumentUseLine = TraceUseLine & {
  certificate: string | null
  certificateTo: string | null
  found: string[]
}
export type ImpactAttempt = {
  point: string
  pointTitle: string
  attempt: number
  at: Moment
  state: string
  isInQuestion: boolean
  lines: { title: string; found: string; corrected: string | null; correctedVerdict: string | null }[]
}
export type ImpactRepair = {
  repair: StreamId
  number: string
  line: string
  status: string
  attempts: ImpactAttempt[]
  decisions: { at: Moment; decision: string; reason: string; by: string }[]
  receivers: { to: string; revision: number }[]
}
export type ImpactView = {
  cause: FactId
  at: Moment
  words: string
  since: Moment | null
  until: Moment
  repairs: ImpactRepair[]
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
    impact: asked ? await impactView(store, tenant, asked, facts, ground) : null,
  }
}

type Ground = Awaited<ReturnType<typeof loadTraceGround>>

async function impactView(
  store: Store,
  tenant: TenantId,
  cause: ImpactCause,
  facts: readonly Fact[],
  ground: Ground,
): Promise<ImpactView> {
  const impact = impactOf(cause, facts, ground.uses, ground.repairs, ground.asOf)
  const decisions = await decisionsOn(store, tenant, cause.id)
  const repairs = [...new Set(impact.touched.map((one) => one.repair))].flatMap((repair): ImpactRepair[] => {
    const state = ground.states.get(repair)
    if (!state) return []
    return [
      {
        repair,
        number: state.number,
        line: `${state.opened.body.line} ${state.opened.body.lineTitle}`,
        status: state.status,
        attempts: impact.touched
          .filter((one) => one.repair === repair)
          .map((one) => impactAttempt(state, one.point, one.attempt, one.rows[0]?.at ?? impact.until, cause.id)),
        decisions: decisions
          .filter((one) => one.stream === repair)
          .map((one) => ({
            at: one.observedAt,
            decision: one.body.decision,
            reason: one.body.reason,
            by: ground.names[one.observedBy] ?? one.observedBy,
          })),
        receivers: state.issues.flatMap(({ fact, transmitted }) =>
          transmitted.map((one) => ({ to: one.body.to, revision: fact.body.revision })),
        ),
      },
    ]
  })
  return {
    cause: cause.id,
    at: cause.observedAt,
    words: cause.kind === 'found-wrong' ? cause.body.how : 'reason' in cause.body ? (cause.body.reason ?? '') : '',
    since: impact.since,
    until: impact.until,
    repairs,
  }
}

function impactAttempt(state: RepairState, no: string, attemptNo: number, at: Moment, cause: FactId): ImpactAttempt {
  const point = state.points.find((one) => one.no === no)
  const attempt = point?.attempts.find((one) => one.attempt === attemptNo)
  const questions = attempt?.questions.filter((one) => one.cause === cause) ?? []
  const lines = (attempt?.criteria ?? [])
    .filter((one) => one.figures.worst !== undefined || one.figures.mean !== undefined)
    .map((one) => {
      const corrected = one.questions.find((question) => question.cause === cause)?.corrected
      return {
        title: one.criterion.title,
        found: one.found,
        corrected: corrected?.found ?? null,
        correctedVerdict: corrected?.verdict ?? null,
      }
    })
  return {
    point: no,
    pointTitle: point?.plan.title ?? '',
    attempt: attemptNo,
    at,
    state: attempt?.state ?? '',
    isInQuestion: questions.some((one) => one.decision === undefined),
    lines,
  }
}

function foundOf(state: RepairState | undefined, no: string, attemptNo: number, fact: FactId): string[] {
  const attempt = state?.points.find((one) => one.no === no)?.attempts.find((one) => one.attempt === attemptNo)
  if (!attempt?.records.some((one) => one.fact.id === fact)) return []
  return attempt.criteria
    .filter((one) => one.figures.worst !== undefined || one.figures.mean !== undefined)
    .map((one) => `${one.criterion.title}: ${one.found}`)
}
