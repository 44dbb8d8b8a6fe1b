import type { FactId } from '../facts/fact'
import type { JudgeFrame } from './frame'
import type { CriterionResult, Finding, VerdictKind } from './verdict'
import { rollUp } from './verdict'

/** What a rule answers; the criterion's own data are added by judgeCriterion. */
export type RuleOutcome = Pick<CriterionResult, 'verdict' | 'found' | 'findings'> &
  Partial<Pick<CriterionResult, 'limit' | 'questions' | 'figures' | 'working' | 'inputs'>>

/** The judge of one kind of rule. */
export type RuleJudge<R> = (rule: R, frame: JudgeFrame) => RuleOutcome

type Parts = {
  mark?: string | undefined
  found?: string | undefined
  limit?: string | undefined
  detail?: string | undefined
  facts?: readonly (FactId | null)[]
}

/** A finding under the criterion's clause. */
export function findingOf(frame: Pick<JudgeFrame, 'criterion'>, code: string, parts: Parts = {}): Finding {
  const { mark, found, limit, detail, facts = [] } = parts
  return {
    code,
    ...(mark === undefined ? {} : { mark }),
    ...(found === undefined ? {} : { found }),
    ...(limit === undefined ? {} : { limit }),
    clause: frame.criterion.clause,
    ...(detail === undefined ? {} : { detail }),
    facts: [...new Set(facts.flatMap((fact) => (fact ? [fact] : [])))],
  }
}

/** Nothing to judge yet: not proven, with the reason as the only finding. */
export function notProven(frame: JudgeFrame, code: string, found: string, parts: Parts = {}): RuleOutcome {
  return {
    verdict: 'not proven',
    found,
    findings: [findingOf(frame, code, code === 'no-readings' ? { found, ...parts } : parts)],
  }
}

/** One statement checked within a criterion: its verdict and, unless it passed silently, what was found. */
export type Check = { verdict: VerdictKind; finding?: Finding }

/** The outcome of several checks: rolled up, unknown never a pass. */
export function outcomeOf(
  checks: readonly Check[],
  found: string,
  more: Omit<RuleOutcome, 'verdict' | 'found' | 'findings'> = {},
): RuleOutcome {
  return {
    verdict: rollUp(checks.map((check) => check.verdict)),
    found,
    findings: checks.flatMap((check) => (check.finding ? [check.finding] : [])),
    ...more,
  }
}
