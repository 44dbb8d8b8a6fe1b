import { cleanlinessMeets } from '@/lib/calc/cleanliness-grade'
import { isRefused } from '@/lib/calc/refusal'
import type { Rule } from '../specification'
import { type JudgeFrame, recordsOfType } from './frame'
import { type Check, findingOf, notProven, outcomeOf, type RuleOutcome } from './outcome'

/** The grade found meets one of the grades that the specification accepts. Grades of different families cannot be compared: not proven. */
export function judgeGrade(rule: Extract<Rule, { kind: 'grade' }>, frame: JudgeFrame): RuleOutcome {
  const limit = `${rule.grades.join(' or ')} or better`
  const graded = recordsOfType(frame.context.records, 'cleanliness').flatMap(({ record, judged }) =>
    record.grade ? [{ grade: record.grade, fact: judged.fact }] : [],
  )
  if (graded.length === 0) return notProven(frame, 'no-readings', 'not graded', { limit })
  const checks = graded.map(({ grade, fact }): Check => {
    const answers = rule.grades.map((required) => cleanlinessMeets({ actual: grade, required }))
    const verdicts = answers.flatMap((answer) => (isRefused(answer) ? [] : [answer.verdict]))
    if (verdicts.includes('meets')) return { verdict: 'pass' }
    if (verdicts.includes('fails'))
      return { verdict: 'fail', finding: findingOf(frame, 'grade-below-limit', { found: grade, limit, facts: [fact] }) }
    const code = verdicts.length === 0 ? 'grade-unknown' : 'grade-not-comparable'
    return { verdict: 'not proven', finding: findingOf(frame, code, { found: grade, limit, facts: [fact] }) }
  })
  return outcomeOf(checks, graded.map(({ grade }) => grade).join(', '))
}
