import { compareFractions, fractionOf, timesFraction } from '../decimal'
import { showReadingUnit } from '../reading'
import type { Rule } from '../specification'
import { measuredExact } from './exact-units'
import { type JudgeFrame, recordsOfType } from './frame'
import { type Check, findingOf, notProven, outcomeOf, type RuleOutcome } from './outcome'
import { showExact } from './show-exact'

/** The tape starts far enough before the leak: a share of the total length as designed, exactly. */
export function judgeTapeStart(rule: Extract<Rule, { kind: 'tape-start' }>, frame: JudgeFrame): RuleOutcome {
  const wraps = recordsOfType(frame.context.records, 'tape-wrap')
  const total = measuredExact(frame.context.design?.totalLength, 'mm')
  if (!total) return notProven(frame, 'design-missing', 'no design sheet', { limit: 'total length' })
  const least = timesFraction(fractionOf(rule.shareOfTotalLength), total)
  const limit = `≥ ${showExact(least)} mm`
  if (wraps.length === 0)
    return { ...notProven(frame, 'no-readings', 'no wrap', { limit }), limit: `${limit} before the leak` }
  const checks = wraps.map(({ record, judged }): Check => {
    const start = measuredExact(record.startBeforeLeak, 'mm')
    if (!start || !record.startBeforeLeak)
      return { verdict: 'not proven', finding: findingOf(frame, 'measure-missing', { limit, facts: [judged.fact] }) }
    if (compareFractions(start, least) >= 0) return { verdict: 'pass' }
    return {
      verdict: 'fail',
      finding: findingOf(frame, 'start-too-near', {
        found: showReadingUnit(record.startBeforeLeak),
        limit,
        facts: [judged.fact],
      }),
    }
  })
  const found = wraps
    .map(({ record }) => (record.startBeforeLeak ? showReadingUnit(record.startBeforeLeak) : 'not stated'))
    .join(', ')
  return outcomeOf(checks, found, { limit: `${limit} before the leak` })
}
