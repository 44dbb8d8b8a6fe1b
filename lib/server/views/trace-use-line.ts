import { showDecimal } from '@/lib/domain/decimal'
import type { FactId, StreamId } from '@/lib/domain/facts/fact'
import type { AttemptStateName, RepairState } from '@/lib/domain/fold/repair-state'
import type { VerdictKind } from '@/lib/domain/judge/verdict'
import { showUnit, Unit } from '@/lib/domain/reading'
import type { Moment } from '@/lib/domain/time'
import type { TraceRow } from '@/lib/domain/trace/trace-batch'

/** One use as screens, exports and the command line show it. */
export type TraceUseLine = {
  fact: FactId
  at: Moment
  repair: StreamId
  number: string
  line: string
  status: string | null
  point: string
  pointTitle: string
  attempt: number
  role: string
  into: string | null
  amount: string | null
  verdict: VerdictKind | null
  state: AttemptStateName | null
  isInQuestion: boolean
  isOverruled: boolean
}

/** The line of one use, with how its attempt stands now. */
export function traceUseLine(row: TraceRow, states: ReadonlyMap<StreamId, RepairState>): TraceUseLine {
  const point = states.get(row.repair)?.points.find((one) => one.no === row.point)
  const attempt = point?.attempts.find((one) => one.attempt === row.attempt)
  return {
    fact: row.fact,
    at: row.at,
    repair: row.repair,
    number: row.number,
    line: row.line,
    status: row.status,
    point: row.point,
    pointTitle: point?.plan.title ?? '',
    attempt: row.attempt,
    role: row.role,
    into: row.into ?? null,
    amount: row.amount ? amountWords(row.amount) : null,
    verdict: attempt && attempt.criteria.length > 0 ? attempt.verdict : null,
    state: attempt?.state ?? null,
    isInQuestion: attempt?.questions.some((one) => one.decision === undefined) ?? false,
    isOverruled: row.overruled === true,
  }
}

function amountWords(amount: { digits: number; scale: number; unit: string }): string {
  const unit = Unit.safeParse(amount.unit)
  return `${showDecimal(amount)} ${unit.success ? showUnit(unit.data) : amount.unit}`
}
