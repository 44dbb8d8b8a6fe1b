import type { JudgeContext, JudgedRecord } from '../judge/judge-context'
import { judgePoint } from '../judge/judge-criterion'
import type { CriterionResult } from '../judge/verdict'
import { windowOf } from '../judge/window-of'
import { dayOf, instantOf, type Moment } from '../time'
import { type AttemptSlot, attemptBeside, type PointSlots } from './attempt-slots'
import { designAt, presentDefect } from './design-in-force'
import type { EffectiveRecord } from './effective-records'
import { revisionAt } from './fold-revisions'
import { ofKind } from './order-facts'
import { photoStates, photosToComeOf } from './photo-states'
import type { RepairGround } from './repair-ground'
import type { WindowState } from './repair-state'

/** An attempt with what the specification in force says of it. */
export type JudgedSlot = {
  slot: AttemptSlot
  context: JudgeContext | null
  criteria: CriterionResult[]
  windows: WindowState[]
}

/**
 * What the criteria of one attempt are judged from: its own governing records, and those of the attempts at other points that belong with it. Null
 * when no specification revision was in force when the work was done.
 */
export function judgeContextOf(
  ground: RepairGround,
  points: readonly PointSlots[],
  slot: AttemptSlot,
): JudgeContext | null {
  const revision = revisionAt(ground.specifications, slot.workFrom ?? ground.openUntil)
  if (!revision) return null
  const others = points.filter((point) => point.no !== slot.no).flatMap((point) => attemptBeside(point, slot).governing)
  return {
    point: slot.plan,
    attempt: slot.attempt,
    asOf: endOf(ground, slot),
    specification: { stream: revision.stream, revision: revision.body.revision, body: revision.body.body },
    records: slot.governing.map(judgedRecord),
    otherRecords: others.map(judgedRecord).sort((a, b) => instantOf(a.observedAt) - instantOf(b.observedAt)),
    design: designAt(ground, slot.workTo),
    defect: presentDefect(ground),
    geometry: ground.opened.body.geometry,
    photos: photoStates(ground, slot),
    photosToCome: photosToComeOf(ground, slot),
    batches: ground.batches,
    instruments: ground.instruments,
    persons: ground.persons,
    releasedAt: ofKind(slot.facts, 'released')[0]?.observedAt ?? null,
    clockErrors: ground.clockErrors,
    today: dayOf(ground.asOf),
  }
}

function endOf(ground: RepairGround, slot: AttemptSlot): Moment {
  return slot.closedAt ?? ground.asOf
}

function judgedRecord(one: EffectiveRecord): JudgedRecord {
  return {
    fact: one.fact.id,
    record: one.record,
    point: one.point,
    attempt: one.attempt,
    observedAt: one.fact.observedAt,
    observedBy: one.fact.observedBy,
  }
}

/** Judge every attempt by the revision in force when it was performed; unperformed ones by the revision in force now. */
export function judgeAttempts(ground: RepairGround, points: readonly PointSlots[]): Map<AttemptSlot, JudgedSlot> {
  const judged = new Map<AttemptSlot, JudgedSlot>()
  for (const slot of points.flatMap((point) => point.attempts)) {
    const context = judgeContextOf(ground, points, slot)
    const windows = context
      ? context.specification.body.criteria
          .filter((one) => one.point === slot.no && one.rule.kind === 'window')
          .flatMap((one) => windowOf(one, context) ?? [])
      : []
    judged.set(slot, {
      slot,
      context,
      criteria: context ? withDecisions(ground, slot, judgePoint(context)) : [],
      windows,
    })
  }
  return judged
}

/** Note on each question the decision that a person took for this attempt after an impact search. */
function withDecisions(ground: RepairGround, slot: AttemptSlot, results: CriterionResult[]): CriterionResult[] {
  const decisions = ofKind(ground.own, 'impact-decided').filter((one) =>
    one.body.points.some((at) => at.point === slot.no && at.attempt === slot.attempt),
  )
  return results.map((result) => ({
    ...result,
    questions: result.questions.map((question) => {
      const decision = decisions.findLast((one) => one.body.cause === question.cause)
      return decision ? { ...question, decision: decision.id } : question
    }),
  }))
}
