import type { Fact } from '@/lib/domain/facts/fact-kinds'
import { foldRepair } from '@/lib/domain/fold/fold-repair'
import type { FoldBeside } from '@/lib/domain/fold/repair-ground'
import type { AttemptState, PointState, RepairState } from '@/lib/domain/fold/repair-state'
import { at, stream } from './fact-maker'
import type { SmallJob } from './small-job'
import { REPAIR } from './small-job-plan'

export function fold(facts: readonly Fact[], when: string, beside: FoldBeside = {}): RepairState {
  return foldRepair(facts, stream(REPAIR), at(when), beside)
}

export function pointOf(state: RepairState, no: string): PointState {
  const found = state.points.find((one) => one.no === no)
  if (!found) throw new Error(`no point ${no}`)
  return found
}

export function attemptOf(state: RepairState, no: string, attempt = 1): AttemptState {
  const found = pointOf(state, no).attempts.find((one) => one.attempt === attempt)
  if (!found) throw new Error(`no attempt ${attempt} at ${no}`)
  return found
}

export const stateAt = (job: SmallJob, when: string, no: string, attempt = 1) =>
  attemptOf(fold(job.facts, when), no, attempt).state

export const releaseOf = (state: RepairState, no: string, index = 0, attempt = 1) =>
  attemptOf(state, no, attempt).releases[index]
