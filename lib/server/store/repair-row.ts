import type { StreamId } from '@/lib/domain/facts/fact'
import type { NonconformanceState } from '@/lib/domain/fold/nonconformance-state'
import type { AttemptStateName, RepairState, RepairStatus, WindowState } from '@/lib/domain/fold/repair-state'
import type { VerdictKind } from '@/lib/domain/judge/verdict'
import type { Party } from '@/lib/domain/roles'
import type { PointNo } from '@/lib/domain/specification'
import { type CalendarDay, instantOf, type Moment } from '@/lib/domain/time'

/** A point on which work or a decision is due. */
export type WaitingPoint = {
  point: PointNo
  title: string
  attempt: number
  state: AttemptStateName
  verdict: VerdictKind
  awaiting: Party[]
  missing: string[]
}

/** A repair in a list, as last folded. */
export type RepairRow = {
  stream: StreamId
  number: string
  project: StreamId
  line: string
  lineTitle: string
  wrap: string
  status: RepairStatus
  foldedAt: Moment
  openedAt: Moment
  /** Open points that are not yet released, in the order of the plan. */
  waiting: WaitingPoint[]
  windows: Pick<WindowState, 'title' | 'point' | 'state' | 'endsAt'>[]
  nonconformances: { stream: StreamId; number: string; state: NonconformanceState['state'] }[]
  questionCount: number
  conflictCount: number
  acceptedAt: Moment | null
  lifeEndsOn: CalendarDay | null
  nextInspectionOn: CalendarDay | null
  dossierRevision: number | null
  revisionDue: boolean
}

const SETTLED: readonly AttemptStateName[] = ['released', 'not applicable', 'superseded', 'closed']

/** What lists show of a folded repair. */
export function repairRow(state: RepairState): RepairRow {
  const { opened, acceptance } = state
  const isRunning = (window: WindowState) => window.state === 'running' || window.state === 'warning'
  return {
    stream: state.stream,
    number: state.number,
    project: opened.body.project,
    line: opened.body.line,
    lineTitle: opened.body.lineTitle,
    wrap: opened.body.wrap,
    status: state.status,
    foldedAt: state.asOf,
    openedAt: opened.observedAt,
    waiting: state.points
      .filter((point) => point.blockedBy.length === 0 && !SETTLED.includes(point.current.state))
      .map(({ no, plan, current, awaiting }) => ({
        point: no,
        title: plan.title,
        attempt: current.attempt,
        state: current.state,
        verdict: current.verdict,
        awaiting,
        missing: current.missing,
      })),
    windows: state.windows
      .filter(isRunning)
      .map(({ title, point, state: name, endsAt }) => ({ title, point, state: name, endsAt })),
    nonconformances: state.nonconformances
      .filter((one) => one.isOpen)
      .map((one) => ({ stream: one.stream, number: one.number, state: one.state })),
    questionCount: state.points.reduce(
      (sum, point) => sum + point.attempts.reduce((own, attempt) => own + attempt.questions.length, 0),
      0,
    ),
    conflictCount: state.conflicts.filter((one) => one.resolved === null).length,
    acceptedAt: acceptance?.fact.observedAt ?? null,
    lifeEndsOn: acceptance?.lifeEndsOn ?? null,
    nextInspectionOn: acceptance?.nextInspectionOn ?? null,
    dossierRevision: state.issues.reduce<number | null>(
      (last, one) => Math.max(last ?? 0, one.fact.body.revision),
      null,
    ),
    revisionDue: state.revisionDue,
  }
}

const SOON_MS = 5 * 60_000

/** When time alone may change a row, in milliseconds since the epoch: an end of a running window, a due day. Null when it cannot. */
export function rowChangesAt(state: RepairState): number | null {
  const now = instantOf(state.asOf)
  const running = state.windows.filter((one) => one.state === 'running' || one.state === 'warning')
  const offset = state.opened.observedAt.endsWith('Z') ? 'Z' : state.opened.observedAt.slice(-6)
  const days = [state.acceptance?.nextInspectionOn, state.acceptance?.lifeEndsOn].flatMap((day) =>
    day ? [Date.parse(`${day}T00:00:00${offset}`), Date.parse(`${day}T00:00:00${offset}`) + 86_400_000] : [],
  )
  const instants = [
    ...running.flatMap((one) => (one.endsAt ? [instantOf(one.endsAt)] : [])),
    ...(running.length > 0 ? [now + SOON_MS] : []),
    ...days,
  ].filter((at) => at > now)
  return instants.length > 0 ? Math.min(...instants) : null
}
