import type { CriterionResult } from '../judge/verdict'
import { decisionShown } from './decision-shown'
import { formulaTextOf } from './formula-texts'
import type { Working, WorkingGround } from './working'
import { workingArithmetic } from './working-arithmetic'
import { workingInputs } from './working-inputs'

/** How a criterion was judged: formula, source, inputs with their facts, arithmetic, limit and decision rule. Nothing in it changes a verdict. */
export function workingOf(result: CriterionResult, ground: WorkingGround): Working {
  return {
    ...formulaTextOf(result.criterion),
    inputs: workingInputs(result, ground),
    arithmetic: [...new Set(workingArithmetic(result, ground))],
    limit: result.limit,
    decision: decisionShown(result, ground),
  }
}
