import type { Fact, FactOf } from '../facts/fact-kinds'
import type { PlanPoint } from '../plan'
import type { PointNo } from '../specification'
import { instantOf, type Moment } from '../time'
import type { EffectiveRecord } from './effective-records'
import { revisionAt } from './fold-revisions'
import type { RepairGround } from './repair-ground'
import { EVENT_RECORDS, earliest, isAtOrBefore, latest, workSpan } from './work-span'

/** One attempt at a point with its facts and records, before anything is judged. */
export type AttemptSlot = {
  /** The point as the plan had it when the work was done; for unperformed work as it has it now. */
  plan: PlanPoint
  no: PointNo
  attempt: number
  opened: FactOf<'attempt-opened'> | null
  /** Null for a first attempt: it is open from the start. */
  openedAt: Moment | null
  /** When the next attempt began. */
  closedAt: Moment | null
  facts: Fact[]
  records: EffectiveRecord[]
  governing: EffectiveRecord[]
  workFrom: Moment | null
  workTo: Moment | null
  /** The record with which the work began. */
  firstWork: EffectiveRecord | null
}
export type PointSlots = { plan: PlanPoint; no: PointNo; attempts: [AttemptSlot, ...AttemptSlot[]] }

/** Key of an attempt in maps: `05/2`. */
export function attemptKey(point: string, attempt: number): string {
  return `${point}/${attempt}`
}

/**
 * Every point of the plan in force, and points of earlier revisions where something was recorded, each with all its attempts in order. A record at
 * a point that no revision has stays out of here and is listed as remarkable.
 */
export function attemptSlots(ground: RepairGround): PointSlots[] {
  const plan = revisionAt(ground.plans, ground.openUntil)
  const points = new Map<PointNo, PlanPoint>()
  const naming = factsNaming(ground.own)
  for (const revision of ground.plans)
    for (const point of revision.body.body.points)
      if (revision === plan || naming.has(point.no)) points.set(point.no, point)
  if (plan) for (const point of plan.body.body.points) points.set(point.no, point)
  return [...points.values()]
    .sort((a, b) => (a.no < b.no ? -1 : 1))
    .map((point) => ({ plan: point, no: point.no, attempts: slotsOf(ground, point, naming.get(point.no) ?? []) }))
}

type Naming = { fact: Fact; attempts: number[] }

/** The facts that name each point, in their order, with the attempts that they name there. */
function factsNaming(own: readonly Fact[]): Map<PointNo, Naming[]> {
  const naming = new Map<PointNo, Naming[]>()
  for (const fact of own)
    for (const { point, attempt } of pointsNamed(fact)) {
      const known = naming.get(point) ?? []
      const last = known.at(-1)
      if (last?.fact === fact) last.attempts.push(attempt)
      else known.push({ fact, attempts: [attempt] })
      naming.set(point, known)
    }
  return naming
}

function slotsOf(ground: RepairGround, point: PlanPoint, naming: readonly Naming[]): [AttemptSlot, ...AttemptSlot[]] {
  const numbers = [...new Set([1, ...naming.flatMap((one) => one.attempts)])].sort((a, b) => a - b)
  const slots = numbers.map((attempt): AttemptSlot => {
    const facts = naming.filter((one) => one.attempts.includes(attempt)).map((one) => one.fact)
    const opened = facts.find((fact): fact is FactOf<'attempt-opened'> => fact.kind === 'attempt-opened') ?? null
    const records = ground.records.filter((one) => one.point === point.no && one.attempt === attempt)
    const governing = records.filter((one) => one.overruledBy === null)
    const work = governing
      .filter((one) => !EVENT_RECORDS.has(one.record.type))
      .map((one) => ({ one, ...workSpan(one.record, one.fact.observedAt) }))
    const workFrom = earliest(work.map((one) => one.from))
    return {
      plan: pointAt(ground, point, workFrom),
      no: point.no,
      attempt,
      opened,
      closedAt: null,
      openedAt: attempt === 1 ? null : (opened?.observedAt ?? earliest(facts.map((fact) => fact.observedAt))),
      facts,
      records,
      governing,
      workFrom,
      workTo: latest(work.map((one) => one.to)),
      firstWork: work.find((one) => one.from === workFrom)?.one ?? null,
    }
  })
  slots.forEach((slot, at) => {
    slot.closedAt = slots[at + 1]?.openedAt ?? null
  })
  const [first, ...rest] = slots
  if (!first) throw new Error('a point has at least one attempt')
  return [first, ...rest]
}

function pointAt(ground: RepairGround, present: PlanPoint, workFrom: Moment | null): PlanPoint {
  if (workFrom === null) return present
  return revisionAt(ground.plans, workFrom)?.body.body.points.find((one) => one.no === present.no) ?? present
}

function pointsNamed(fact: Fact): { point: PointNo; attempt: number }[] {
  if (fact.kind === 'attempt-opened') return fact.body.points.map((point) => ({ point, attempt: fact.body.attempt }))
  if (
    fact.kind === 'nonconformance-raised' ||
    !('point' in fact.body) ||
    !('attempt' in fact.body) ||
    fact.body.point === undefined
  )
    return []
  return [{ point: fact.body.point, attempt: fact.body.attempt }]
}

/** The attempt at a point that was open at a moment: the last one opened at or before it. */
export function attemptAt(point: PointSlots, at: Moment): AttemptSlot {
  return point.attempts.findLast((one) => one.openedAt === null || isAtOrBefore(one.openedAt, at)) ?? point.attempts[0]
}

/** The attempt at another point that belongs with one: the last opened before that attempt ended; the latest while it has not ended. */
export function attemptBeside(point: PointSlots, slot: AttemptSlot): AttemptSlot {
  const { closedAt } = slot
  if (closedAt === null) return point.attempts.at(-1) ?? point.attempts[0]
  return (
    point.attempts.findLast((one) => one.openedAt === null || instantOf(one.openedAt) < instantOf(closedAt)) ??
    point.attempts[0]
  )
}
