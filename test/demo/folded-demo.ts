import { StreamId } from '@/lib/domain/facts/fact'
import type { Fact } from '@/lib/domain/facts/fact-kinds'
import { foldRepair } from '@/lib/domain/fold/fold-repair'
import type { AttemptState, RepairState } from '@/lib/domain/fold/repair-state'
import type { CriterionResult } from '@/lib/domain/judge/verdict'
import type { Moment } from '@/lib/domain/time'
import { demoFacts } from '@/lib/server/demo/demo-facts'
import { DEMO_START } from '@/lib/server/demo/demo-time'

export const REPAIRS = ['MD-0041', 'MD-0042', 'MD-0043', 'MD-0044'] as const

const scripted = demoFacts().facts
/** The demo's facts without their receipts. */
export const FACTS: readonly Fact[] = scripted.map((one) => one.fact)

/** A repair of the demo folded at a moment, with further facts beside the seed's. */
export function foldDemo(number: string, asOf: Moment = DEMO_START, further: readonly Fact[] = []): RepairState {
  return foldRepair([...FACTS, ...further], StreamId.parse(`repair:${number}`), asOf)
}

/** One attempt of one point. @throws when the repair has no such attempt */
export function attemptOf(state: RepairState, point: string, attempt = 1): AttemptState {
  const found = state.points.find((one) => one.no === point)?.attempts.find((one) => one.attempt === attempt)
  if (!found) throw new Error(`no attempt ${attempt} at point ${point}`)
  return found
}

/** One criterion's result by its id. @throws when it was not judged */
export function criterionOf(state: RepairState, id: string, attempt = 1): CriterionResult {
  const found = attemptOf(state, id.slice(0, 2), attempt).criteria.find((one) => one.criterion.id === id)
  if (!found) throw new Error(`criterion ${id} was not judged`)
  return found
}

/** Points and attempts with an undecided question of a kind, as `16/1`. */
export function questioned(state: RepairState, cause: string): string[] {
  return state.points.flatMap((point) =>
    point.attempts
      .filter((one) => one.questions.some((question) => question.cause === cause && question.decision === undefined))
      .map((one) => `${one.point}/${one.attempt}`),
  )
}
