import { compareFractions, fractionOf, showDecimal } from '../decimal'
import type { FactId } from '../facts/fact'
import { showReadingUnit } from '../reading'
import type { Rule } from '../specification'
import { measuredExact } from './exact-units'
import { type JudgeFrame, recordsOfType } from './frame'
import { type Check, findingOf, notProven, outcomeOf, type RuleOutcome } from './outcome'
import type { DraftOf } from './yield-builder'

type FindingsRule = Extract<Rule, { kind: 'findings' }>
type SeenFinding = NonNullable<DraftOf<'visual'>['findings']>[number]

/** Every finding is of a kind that is allowed and no larger. Nothing found is a statement of its own: an empty list alone proves nothing. */
export function judgeFindings(rule: FindingsRule, frame: JudgeFrame): RuleOutcome {
  const looks = recordsOfType(frame.context.records, 'visual')
  if (looks.length === 0) return notProven(frame, 'no-readings', 'not looked at')
  const checks = looks.flatMap(({ record, judged }) => checksOf(rule, record, judged.fact, frame))
  const seen = looks.flatMap(({ record }) => record.findings ?? [])
  const found =
    seen.length === 0
      ? 'none stated'
      : seen.map((one) => `${one.kind} ${one.size ? showReadingUnit(one.size) : ''} at ${one.place}`).join(', ')
  return outcomeOf(
    checks,
    looks.every(({ record }) => record.noFindings === 'yes') && seen.length === 0 ? 'none' : found,
    { figures: { count: seen.length } },
  )
}

function checksOf(rule: FindingsRule, record: DraftOf<'visual'>, fact: FactId | null, frame: JudgeFrame): Check[] {
  const seen = record.findings ?? []
  if (seen.length === 0) {
    if (record.noFindings === 'yes') return [{ verdict: 'pass' }]
    return [
      {
        verdict: 'not proven',
        finding: findingOf(frame, 'statement-missing', { detail: 'findings, or that there are none', facts: [fact] }),
      },
    ]
  }
  const checks = seen.map((one) => checkOf(rule, one, fact, frame))
  if (record.noFindings === 'yes')
    checks.push({
      verdict: 'not proven',
      finding: findingOf(frame, 'statement-contradicts', {
        detail: 'findings are listed and none stated',
        facts: [fact],
      }),
    })
  return checks
}

function checkOf(rule: FindingsRule, seen: SeenFinding, fact: FactId | null, frame: JudgeFrame): Check {
  const allowed = rule.allowed.find((one) => one.finding === seen.kind)
  const size = measuredExact(seen.size, 'mm')
  const parts = {
    mark: seen.place,
    found: seen.size ? `${seen.kind} ${showReadingUnit(seen.size)}` : seen.kind,
    facts: [fact],
  }
  if (!allowed) return { verdict: 'fail', finding: findingOf(frame, 'finding-not-allowed', parts) }
  const limit = `≤ ${showDecimal(allowed.maxSize)} mm`
  if (!size) return { verdict: 'not proven', finding: findingOf(frame, 'measure-missing', { ...parts, limit }) }
  return compareFractions(size, fractionOf(allowed.maxSize)) <= 0
    ? { verdict: 'pass' }
    : { verdict: 'fail', finding: findingOf(frame, 'finding-too-large', { ...parts, limit }) }
}
