import type { Rule } from '../specification'
import { correctedQuestions } from './corrected-questions'
import { type JudgeFrame, readingsOf, type Taken } from './frame'
import { isTaken } from './judge-reading'
import { findingOf, outcomeOf, type RuleOutcome } from './outcome'

type CountRule = Extract<Rule, { kind: 'count' }>

/** Enough readings taken. More than planned stay visible; no access, not inspected and not applicable are not taken. */
export function judgeCount(rule: CountRule, frame: JudgeFrame): RuleOutcome {
  const readings = readingsOf(frame, rule.quantity)
  const judge = (list: Taken[]) => judgeList(rule, frame, list)
  return { ...judge(readings), questions: correctedQuestions(frame, readings, judge) }
}

function judgeList(rule: CountRule, frame: JudgeFrame, readings: readonly Taken[]): RuleOutcome {
  const count = readings.filter(isTaken).length
  const found = `${count} taken of ${rule.atLeast} planned`
  const figures = { count, planned: rule.atLeast }
  if (count >= rule.atLeast) return outcomeOf([{ verdict: 'pass' }], found, { figures })
  const finding = findingOf(frame, 'too-few-readings', {
    found: `${count}`,
    limit: `${rule.atLeast}`,
    facts: readings.map((one) => one.fact),
  })
  return outcomeOf([{ verdict: 'not proven', finding }], found, { figures })
}
