import type { Rule } from '../specification'
import { type JudgeFrame, readingsOf } from './frame'
import { isTaken } from './judge-reading'
import { findingOf, outcomeOf, type RuleOutcome } from './outcome'

/** Enough readings taken. More than planned stay visible; no access, not inspected and not applicable are not taken. */
export function judgeCount(rule: Extract<Rule, { kind: 'count' }>, frame: JudgeFrame): RuleOutcome {
  const readings = readingsOf(frame, rule.quantity)
  const count = readings.filter(isTaken).length
  const found = `${count} taken of ${rule.atLeast} planned`
  const figures = { count, planned: rule.atLeast }
  if (count >= rule.atLeast) return outcomeOf([{ verdict: 'pass' }], found, { figures })
  const finding = findingOf(frame, 'too-few-readings', { found: `${count}`, limit: `${rule.atLeast}`, facts: readings.map((one) => one.fact) })
  return outcomeOf([{ verdict: 'not proven', finding }], found, { figures })
}
