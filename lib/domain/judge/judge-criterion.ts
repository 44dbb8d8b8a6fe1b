import type { Criterion, Rule, RuleKind } from '../specification'
import { frameOf, type JudgeFrame, type PointFrame } from './frame'
import { judgeBatches } from './judge-batches'
import type { JudgeContext } from './judge-context'
import { judgeCount } from './judge-count'
import { judgeCureEquivalent, judgeCureHold } from './judge-cure'
import { judgeDesignEnvelope } from './judge-design-envelope'
import { judgeEach } from './judge-each'
import { judgeFindings } from './judge-findings'
import { judgeFlag } from './judge-flag'
import { judgeGrade } from './judge-grade'
import { judgeInstruments } from './judge-instruments'
import { judgeMean } from './judge-mean'
import { judgeOrder } from './judge-order'
import { judgePermit } from './judge-permit'
import { judgePersons } from './judge-persons'
import { judgePhotos } from './judge-photos'
import { judgePlies } from './judge-plies'
import { judgeBandLength, judgeHardeningTime, judgePlugAmount } from './judge-plug'
import { judgePressureDrop } from './judge-pressure-drop'
import { judgeRatio } from './judge-ratio'
import { judgeTapeStart } from './judge-tape-start'
import { judgeWindow } from './judge-window'
import { judgeWorkingTime } from './judge-working-time'
import type { RuleJudge } from './outcome'
import { showLimit } from './show-limit'
import type { CriterionResult } from './verdict'

type Judges = { [K in RuleKind]: RuleJudge<Extract<Rule, { kind: K }>> }

const JUDGES: Judges = {
  each: judgeEach,
  mean: judgeMean,
  count: judgeCount,
  yes: judgeFlag,
  no: judgeFlag,
  grade: judgeGrade,
  window: judgeWindow,
  ratio: judgeRatio,
  'working-time': judgeWorkingTime,
  'hardening-time': judgeHardeningTime,
  'plug-amount': judgePlugAmount,
  'band-length': judgeBandLength,
  'tape-start': judgeTapeStart,
  'cure-hold': judgeCureHold,
  'cure-equivalent': judgeCureEquivalent,
  'pressure-drop': judgePressureDrop,
  findings: judgeFindings,
  'design-envelope': judgeDesignEnvelope,
  plies: judgePlies,
  'instruments-valid': judgeInstruments,
  'batches-valid': judgeBatches,
  'persons-qualified': judgePersons,
  'permit-valid': judgePermit,
  photos: judgePhotos,
  'order-of-facts': judgeOrder,
}

/** Judge one criterion of the specification in one attempt of its point. Pure: the same context gives the same result on the phone, the server and in the dossier. */
export function judgeCriterion(criterion: Criterion, context: JudgeContext): CriterionResult {
  return judgeInFrame(criterion, frameOf(context))
}

/** Judge every criterion that the specification has for the context's point, in its order. The records are read once for all of them. */
export function judgePoint(context: JudgeContext): CriterionResult[] {
  const frame = frameOf(context)
  return context.specification.body.criteria
    .filter((criterion) => criterion.point === context.point.no)
    .map((criterion) => judgeInFrame(criterion, frame))
}

function judgeInFrame(criterion: Criterion, point: PointFrame): CriterionResult {
  const frame: JudgeFrame = { ...point, criterion }
  const judge = JUDGES[criterion.rule.kind] as RuleJudge<Rule>
  const outcome = judge(criterion.rule, frame)
  return {
    criterion,
    specification: point.context.specification.stream,
    revision: point.context.specification.revision,
    limit: outcome.limit ?? showLimit(criterion, point.context),
    found: outcome.found,
    verdict: outcome.verdict,
    findings: outcome.findings,
    questions: outcome.questions ?? [],
    figures: outcome.figures ?? {},
    working: outcome.working ?? [],
    ...(outcome.inputs ? { inputs: outcome.inputs } : {}),
  }
}
