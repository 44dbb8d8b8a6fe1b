import type { Rule } from '../specification'
import { instantOf, type Moment, showMoment } from '../time'
import { type JudgeFrame, recordsOfType, type Yielded } from './frame'
import { type Check, findingOf, notProven, outcomeOf, type RuleOutcome } from './outcome'

type Span = { from: number; to: number; no: string }

/** A permit covers every time at which something of this attempt was done or observed. */
export function judgePermit(_rule: Extract<Rule, { kind: 'permit-valid' }>, frame: JudgeFrame): RuleOutcome {
  const permits = recordsOfType([...frame.context.records, ...frame.context.otherRecords], 'permit')
  const spans = permits.flatMap(({ record }): Span[] =>
    record.validFrom && record.validTo
      ? [{ from: instantOf(record.validFrom), to: instantOf(record.validTo), no: record.permitNo ?? '?' }]
      : [],
  )
  if (spans.length === 0) return notProven(frame, 'permit-missing', 'no permit recorded')
  if (frame.own.length === 0) return notProven(frame, 'no-readings', 'nothing recorded')
  const checks = frame.own.map((one) => checkRecord(one, spans, frame))
  return outcomeOf(checks, [...new Set(spans.map((span) => span.no))].join(', '))
}

function checkRecord(one: Yielded, spans: readonly Span[], frame: JudgeFrame): Check {
  const uncovered = timesOf(one).find(
    (at) => !spans.some((span) => span.from <= instantOf(at) && instantOf(at) <= span.to),
  )
  if (uncovered === undefined) return { verdict: 'pass' }
  return {
    verdict: 'fail',
    finding: findingOf(frame, 'permit-not-covering', {
      found: showMoment(uncovered),
      limit: spans.map((span) => span.no).join(', '),
      facts: [one.judged.fact],
    }),
  }
}

function timesOf({ judged, yields }: Yielded): Moment[] {
  const events = yields.events
    .filter((event) => event.name !== 'permit-from' && event.name !== 'permit-to')
    .map((event) => event.at)
  return events.length > 0 ? events : [judged.observedAt]
}
