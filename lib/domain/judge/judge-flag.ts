import type { Rule } from '../specification'
import { factsOf, type JudgeFrame } from './frame'
import { type Check, findingOf, notProven, outcomeOf, type RuleOutcome } from './outcome'
import { DEMANDED_BY, FLAGS } from './quantity-names'

/** Every statement of a flag says what the rule wants. Nothing stated is not proven, never a yes. */
export function judgeFlag(rule: Extract<Rule, { kind: 'yes' | 'no' }>, frame: JudgeFrame): RuleOutcome {
  const stated = statementsOf(frame, rule.flag)
  const demandedBy = DEMANDED_BY[rule.flag]
  const demands = demandedBy ? statementsOf(frame, demandedBy) : []
  if (demands.length > 0 && demands.every((one) => one.value === 'no'))
    return outcomeOf([{ verdict: 'pass' }], 'not asked for')
  if (stated.length === 0)
    return notProven(frame, 'statement-missing', 'not stated', { limit: rule.kind, detail: wordsOf(rule.flag) })
  const checks = stated.map(
    (one): Check =>
      one.value === rule.kind
        ? { verdict: 'pass' }
        : {
            verdict: 'fail',
            finding: findingOf(frame, `stated-${one.value}`, {
              found: one.value,
              limit: rule.kind,
              detail: wordsOf(rule.flag),
              facts: factsOf([one]),
            }),
          },
  )
  const against = stated.filter((one) => one.value !== rule.kind).length
  return outcomeOf(
    checks,
    against === 0
      ? rule.kind
      : stated.length === 1
        ? (stated[0]?.value ?? '')
        : `${against} of ${stated.length} say otherwise`,
  )
}

function statementsOf(frame: JudgeFrame, flag: string) {
  return frame.own.flatMap(({ judged, yields }) =>
    yields.flags.filter((one) => one.name === flag).map((one) => ({ value: one.value, fact: judged.fact })),
  )
}

function wordsOf(flag: string): string {
  return (FLAGS as Partial<Record<string, string>>)[flag] ?? flag
}
