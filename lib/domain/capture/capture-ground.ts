import { type PersonId, type StreamId, streamKind, streamName, streamOf } from '../facts/fact'
import type { Fact } from '../facts/fact-kinds'
import { attemptSlots } from '../fold/attempt-slots'
import { foldBatch } from '../fold/fold-batch'
import { foldInstrument } from '../fold/fold-instrument'
import { foldPerson } from '../fold/fold-person'
import { foldProject } from '../fold/fold-project'
import { judgeContextOf } from '../fold/judge-attempts'
import type { RepairGround } from '../fold/repair-ground'
import type { BatchState, InstrumentState, PersonState } from '../fold/store-states'
import type { JudgeContext } from '../judge/judge-context'
import { rolesFor } from '../permissions'
import type { Grid } from '../records/common'
import type { PointRecord } from '../records/record'
import { dayOf, type Moment } from '../time'
import { type CaptureChoices, captureChoices } from './capture-choices'

const RECORDERS = rolesFor('enter-record')

/** Every batch, instrument and person that a point form may name. */
export type CaptureStores = {
  batches: Record<StreamId, BatchState>
  instruments: Record<StreamId, InstrumentState>
  persons: Record<StreamId, PersonState>
}

/** What a point form draws on, from facts alone: the same on the server and on a device without a network. */
export type CaptureGround = CaptureChoices & {
  judge: JudgeContext
  /** Persons with a role that records in the project, on whatever day. */
  observers: CaptureChoices['persons']
  grid: Grid | null
  leakClock: string | null
  /** The record of a fact as it stands, for its correction by who entered it. */
  correcting: { record: PointRecord; attempt: number } | null
}

export type CaptureAsk = { point: string; attempt: number; correcting: string | null; me: PersonId }

/** Fold the stores of a tenant from the facts of their streams. */
export function captureStores(facts: readonly Fact[], asOf: Moment): CaptureStores {
  const byStream = new Map<StreamId, Fact[]>()
  for (const fact of facts) {
    const own = byStream.get(fact.stream)
    if (own) own.push(fact)
    else byStream.set(fact.stream, [fact])
  }
  const stores: CaptureStores = { batches: {}, instruments: {}, persons: {} }
  for (const [stream, own] of byStream) {
    const kind = streamKind(stream)
    if (kind === 'batch') put(stores.batches, stream, foldBatch(own, stream, asOf))
    else if (kind === 'instrument') put(stores.instruments, stream, foldInstrument(own, stream, asOf))
    else if (kind === 'person') put(stores.persons, stream, foldPerson(own, stream, asOf))
  }
  return stores
}

/** The judge's context and the choices of one form; null when there is no such attempt, no specification, or a record that is not the asker's own to correct. */
export function captureGround(ground: RepairGround, stores: CaptureStores, ask: CaptureAsk): CaptureGround | null {
  const points = attemptSlots(ground)
  const target = ask.correcting
    ? ground.records.find((one) => one.fact.id === ask.correcting && one.point === ask.point)
    : undefined
  if (ask.correcting && (!target || (target.fact.enteredBy !== ask.me && target.fact.observedBy !== ask.me)))
    return null
  const slot = points
    .find((one) => one.no === ask.point)
    ?.attempts.find((one) => one.attempt === (target?.attempt ?? ask.attempt))
  const context = slot ? judgeContextOf(ground, points, slot) : null
  if (!context) return null
  const judge: JudgeContext = {
    ...context,
    asOf: ground.asOf,
    batches: { ...stores.batches, ...context.batches },
    instruments: { ...stores.instruments, ...context.instruments },
    persons: { ...stores.persons, ...context.persons },
  }
  return {
    judge,
    ...captureChoices(judge, dayOf(ground.asOf)),
    observers: observersOf(ground, judge),
    grid: context.defect?.grid ?? null,
    leakClock: context.defect?.clock ?? ground.opened.body.clock,
    correcting: target ? { record: target.record, attempt: target.attempt } : null,
  }
}

function observersOf(ground: RepairGround, judge: JudgeContext): CaptureChoices['persons'] {
  const project = foldProject(ground.facts, ground.opened.body.project, ground.asOf)
  const roles = new Map<PersonId, Set<string>>()
  for (const { person, role } of project?.grants ?? [])
    if (RECORDERS.includes(role)) roles.set(person, (roles.get(person) ?? new Set()).add(role))
  return [...roles]
    .map(([person, held]) => ({
      id: person,
      label: `${judge.persons[streamOf('person', person)]?.name ?? person}, ${[...held].join(', ')}`,
    }))
    .sort((a, b) => (a.label < b.label ? -1 : 1))
}

/** Names of persons by their id. */
export function namesIn(stores: Pick<CaptureStores, 'persons'>): Record<PersonId, string> {
  const names: Record<PersonId, string> = {}
  for (const person of Object.values(stores.persons)) names[streamName(person.stream) as PersonId] = person.name
  return names
}

function put<S>(into: Record<StreamId, S>, stream: StreamId, state: S | null): void {
  if (state) into[stream] = state
}
