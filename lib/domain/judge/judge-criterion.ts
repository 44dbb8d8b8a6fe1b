import type { Criterion, Rule, RuleKind } from '../specification'
import { frameOf, type JudgeFrame, type PointFrame } from './frame'
import type { JudgeContext } from './judge-context'
import { judgeCount } from './judge-count'
import { judgeEach } from './judge-each'
import { judgeFlag } from './judge-flag'
import { judgeGrade } from './judge-grade'
import { judgeMean } from './judge-mean'
import { judgeWindow } from './judge-window'
import { notProven, type RuleJudge } from './outcome'
import { showLimit } from './show-limit'
import type { CriterionResult } from './verdict'

type Judges = { [K in RuleKind]?: RuleJudge<Extract<Rule, { kind: K }>> }

const JUDGES: Judges = {
  each: judgeEach, mean: judgeMean, count: judgeCount, yes: judgeFlag, no: judgeFlag, grade: judgeGrade, window: judgeWindow,
}

/** Judge one criterion of the specification in one attempt of its point. Pure: the same context gives the same result on the phone, the server and in the dossier. */
export function judgeCriterion(criterion: Criterion, context: JudgeContext): CriterionResult {
  return judgeInFrame(criterion, frameOf(context))
}

/** Judge every criterion that the specification has for the context's point, in its order. */
export function judgePoint(context: JudgeContext): CriterionResult[] {
  const frame = frameOf(context)
  return context.specification.body.criteria.filter((criterion) => criterion.point === context.point.no).map((criterion) => judgeInFrame(criterion, frame))
}

function judgeInFrame(criterion: Criterion, point: PointFrame): CriterionResult {
  const frame: JudgeFrame = { ...point, criterion }
  const judge = JUDGES[criterion.rule.kind] as RuleJudge<Rule> | undefined
  const outcome = judge ? judge(criterion.rule, frame) : notProven(frame, 'rule-unknown', 'not judged')
  return {
    criterion, specification: point.context.specification.stream, revision: point.context.specification.revision,
    limit: outcome.limit ?? showLimit(criterion, point.context), found: outcome.found, verdict: outcome.verdict,
    findings: outcome.findings, questions: outcome.questions ?? [], figures: outcome.figures ?? {}, working: outcome.working ?? [],
  }
}
