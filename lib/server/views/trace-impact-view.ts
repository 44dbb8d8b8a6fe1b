import type { FactId, StreamId } from '@/lib/domain/facts/fact'
import type { Fact } from '@/lib/domain/facts/fact-kinds'
import type { RepairState } from '@/lib/domain/fold/repair-state'
import type { Moment } from '@/lib/domain/time'
import { type ImpactCause, type ImpactTouch, impactOf } from '@/lib/domain/trace/impact-of'
import type { Store, TenantId } from '@/lib/server/store/store'
import { decisionsOn } from './trace-batch-view'
import type { TraceGround } from './trace-ground'

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
  /** Everything in question there for this cause, with what only looked it over: what one decision settles. */
  settles: { point: string; attempt: number }[]
  decisions: { at: Moment; decision: string; reason: string; by: string }[]
  receivers: { to: string; revision: number }[]
}
export type ImpactView = {
  cause: FactId
  at: Moment
  words: string
  since: Moment | null
  until: Moment
  /** Repairs in which a result rests on it. */
  repairs: ImpactRepair[]
  /** Repairs in which it was only checked or taken along: in question too, no result rests on it. */
  checkedOnly: ImpactRepair[]
}
/** The impact search of one cause with how each attempt it reaches stands, and what was decided per repair. Plain data. */
export async function loadImpactView(
  store: Store,
  tenant: TenantId,
  cause: ImpactCause,
  facts: readonly Fact[],
  ground: TraceGround,
): Promise<ImpactView> {
  const impact = impactOf(cause, facts, ground.uses, ground.repairs, ground.asOf)
  const decisions = await decisionsOn(store, tenant, cause.id)
  const show = (state: RepairState): ImpactRepair => {
    const touched = impact.touched.filter((one) => one.repair === state.stream)
    const asked = askedBy(state, cause.id)
    const places = touched.length > 0 ? touched.map(placeOfTouch) : asked
    const settled = new Map([...touched.map(placeOfTouch), ...asked].map((one) => [`${one.point}/${one.attempt}`, one]))
    return {
      repair: state.stream,
      number: state.number,
      line: `${state.opened.body.line} ${state.opened.body.lineTitle}`,
      status: state.status,
      attempts: places.map((one) => impactAttempt(state, one.point, one.attempt, one.at, cause.id)),
      settles: [...settled.values()].map(({ point, attempt }) => ({ point, attempt })),
      decisions: decisions
        .filter((one) => one.stream === state.stream)
        .map((one) => ({
          at: one.observedAt,
          decision: one.body.decision,
          reason: one.body.reason,
          by: ground.names[one.observedBy] ?? one.observedBy,
        })),
      receivers: state.issues.flatMap(({ fact, transmitted }) =>
        transmitted.map((one) => ({ to: one.body.to, revision: fact.body.revision })),
      ),
    }
  }
  const reached = new Set(impact.touched.map((one) => one.repair))
  const states = [...ground.states.values()].sort((a, b) => a.number.localeCompare(b.number))
  return {
    cause: cause.id,
    at: cause.observedAt,
    words: cause.kind === 'found-wrong' ? cause.body.how : (cause.body.reason ?? ''),
    since: impact.since,
    until: impact.until,
    repairs: states.filter((state) => reached.has(state.stream)).map(show),
    checkedOnly: states.filter((state) => !reached.has(state.stream) && askedBy(state, cause.id).length > 0).map(show),
  }
}

type Place = { point: string; attempt: number; at: Moment }

function placeOfTouch(touch: ImpactTouch): Place {
  return { point: touch.point, attempt: touch.attempt, at: touch.rows[0]?.at ?? '' }
}

/** Attempts of a repair that are in question for a cause, decided or not. */
function askedBy(state: RepairState, cause: FactId): Place[] {
  return state.points.flatMap((point) =>
    point.attempts
      .filter((one) => one.questions.some((question) => question.cause === cause))
      .map((one) => ({ point: point.no, attempt: one.attempt, at: one.firstAt ?? state.opened.observedAt })),
  )
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
