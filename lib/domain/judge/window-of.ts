import { type Decimal, toNumber } from '../decimal'
import type { WindowState } from '../fold/repair-state'
import type { Criterion } from '../specification'
import { instantOf, type Moment, momentOf } from '../time'
import { frameOf, type JudgeFrame } from './frame'
import type { JudgeContext } from './judge-context'
import { readSpan } from './judge-window'
import { type WindowRule, type WindowSpan, windowSpan } from './window-span'

/** Share of a running window that is left when its state turns to `warning`: for display, no verdict depends on it. */
const WARNING_SHARE = 0.2

/**
 * The state of a window criterion on observed times at `asOf`; null when the criterion is no window. `endsAt` is when its maximum ends, or when its minimum is
 * met. `met` ended in time (or has run its minimum), `lapsed` did not, `not proven` would change with a known clock error or ends before it starts.
 */
export function windowOf(criterion: Criterion, context: JudgeContext): WindowState | null {
  const { rule } = criterion
  if (rule.kind !== 'window') return null
  const frame: JudgeFrame = { ...frameOf(context), criterion }
  const span = windowSpan(rule, frame)
  return {
    criterion: criterion.id,
    title: criterion.title,
    point: criterion.point,
    attempt: context.attempt,
    state: stateOf(rule, span, context.asOf),
    startedAt: span.start?.at ?? null,
    endedAt: span.start && span.end ? span.end.at : null,
    endsAt: endOf(rule, span),
    clause: criterion.clause,
  }
}

function stateOf(rule: WindowRule, span: WindowSpan, asOf: Moment): WindowState['state'] {
  if (!span.start || span.elapsedMs === null || span.correctedMs === null) return 'not started'
  if (span.spoiledBy) return 'lapsed'
  const asObserved = readSpan(rule, span.elapsedMs, span.end !== null)
  if (asObserved.verdict !== readSpan(rule, span.correctedMs, span.end !== null).verdict) return 'not proven'
  if (asObserved.verdict === 'fail') return 'lapsed'
  if (asObserved.verdict === 'pass') return 'met'
  if (span.end) return 'not proven'
  return runningState(rule, instantOf(asOf) - instantOf(span.start.at))
}

function runningState(rule: WindowRule, elapsedMs: number): WindowState['state'] {
  if (!rule.maxMinutes) return rule.minMinutes && elapsedMs >= toMs(rule.minMinutes) ? 'met' : 'running'
  return toMs(rule.maxMinutes) - elapsedMs <= toMs(rule.maxMinutes) * WARNING_SHARE ? 'warning' : 'running'
}

function endOf(rule: WindowRule, span: WindowSpan): Moment | null {
  const length = rule.maxMinutes ?? rule.minMinutes
  if (!span.start || !length) return null
  const offset = span.start.at.endsWith('Z') ? 'Z' : span.start.at.slice(-6)
  return momentOf(instantOf(span.start.at) + toMs(length), offset)
}

function toMs(minutes: Decimal): number {
  return Math.round(toNumber(minutes) * 60_000)
}
