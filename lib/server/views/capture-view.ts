import { type PersonId, StreamId, streamName } from '@/lib/domain/facts/fact'
import type { Fact } from '@/lib/domain/facts/fact-kinds'
import { attemptSlots } from '@/lib/domain/fold/attempt-slots'
import { foldBatch } from '@/lib/domain/fold/fold-batch'
import { foldInstrument } from '@/lib/domain/fold/fold-instrument'
import { foldPerson } from '@/lib/domain/fold/fold-person'
import { judgeContextOf } from '@/lib/domain/fold/judge-attempts'
import { repairGround } from '@/lib/domain/fold/repair-ground'
import type { BatchState, InstrumentState, PersonState } from '@/lib/domain/fold/store-states'
import type { JudgeContext } from '@/lib/domain/judge/judge-context'
import type { Unit } from '@/lib/domain/reading'
import type { Grid } from '@/lib/domain/records/common'
import type { PointRecord } from '@/lib/domain/records/record'
import type { CalendarDay } from '@/lib/domain/time'
import { dayOf } from '@/lib/domain/time'
import { LATE_AFTER_MINUTES } from '@/lib/server/commands/late-entry'
import { listStreams } from '@/lib/server/store/list-streams'
import { loadRepairFacts } from '@/lib/server/store/load-repair-facts'
import { loadStreams } from '@/lib/server/store/load-stream'
import { clockKindOf } from './clock-kind'
import { mayRead, type ReadingDesk } from './reading-desk'

export type CaptureView = {
  judge: JudgeContext
  batches: { id: string; label: string; role: string; note: string; isBarred: boolean }[]
  instruments: { id: string; label: string; measures: Unit[]; note: string; isBarred: boolean }[]
  persons: { id: string; label: string }[]
  grid: Grid | null
  leakClock: string | null
  utcOffset: string
  clockKind: 'real' | 'demo' | 'test'
  lateAfterMinutes: number
  /** The record of a fact as it stands, for its correction by who entered it. */
  correcting: { record: PointRecord; attempt: number } | null
}

/** What a point form draws on: the judge's context with every batch, instrument and person of the tenant, and the choices. Null when not there. */
export async function loadCaptureView(
  reading: ReadingDesk,
  number: string,
  point: string,
  attempt: number,
  correcting: string | null,
): Promise<CaptureView | null> {
  const stream = StreamId.safeParse(`repair:${number}`)
  if (!stream.success) return null
  const { desk, actor } = reading
  const loaded = await loadRepairFacts(desk.store, actor.tenant, stream.data)
  if (loaded.facts.length === 0) return null
  const asOf = desk.now(null)
  const ground = repairGround(loaded.facts, stream.data, asOf, {})
  const { body } = ground.opened
  if (!mayRead(reading, body.project)) return null
  const points = attemptSlots(ground)
  const target = correcting
    ? ground.records.find((one) => one.fact.id === correcting && one.point === point)
    : undefined
  if (correcting && (!target || (target.fact.enteredBy !== actor.person && target.fact.observedBy !== actor.person)))
    return null
  const slot = points
    .find((one) => one.no === point)
    ?.attempts.find((one) => one.attempt === (target?.attempt ?? attempt))
  const context = slot ? judgeContextOf(ground, points, slot) : null
  if (!context) return null
  const stores = await loadStores(reading)
  const judge: JudgeContext = {
    ...context,
    asOf,
    batches: { ...stores.batches, ...context.batches },
    instruments: { ...stores.instruments, ...context.instruments },
    persons: { ...stores.persons, ...context.persons },
  }
  const project = (await desk.factsOf(body.project))?.find((fact) => fact.kind === 'project-opened')
  return {
    judge,
    ...choicesOf(judge, dayOf(asOf)),
    grid: context.defect?.grid ?? null,
    leakClock: context.defect?.clock ?? body.clock,
    utcOffset: project?.kind === 'project-opened' ? project.body.utcOffset : '+00:00',
    clockKind: await clockKindOf(desk.store, actor.tenant),
    lateAfterMinutes: LATE_AFTER_MINUTES,
    correcting: target ? { record: target.record, attempt: target.attempt } : null,
  }
}

type Stores = {
  batches: Record<StreamId, BatchState>
  instruments: Record<StreamId, InstrumentState>
  persons: Record<StreamId, PersonState>
}

async function loadStores({ desk, actor }: ReadingDesk): Promise<Stores> {
  const stores: Stores = { batches: {}, instruments: {}, persons: {} }
  const asOf = desk.now(null)
  const load = async <S>(
    kind: 'batch' | 'instrument' | 'person',
    fold: (facts: readonly Fact[], one: StreamId, at: string) => S | null,
    into: Record<StreamId, S>,
  ) => {
    const streams = (await listStreams(desk.store, actor.tenant, kind)).map((one) => one.stream)
    const { facts } = await loadStreams(desk.store, actor.tenant, streams)
    for (const stream of streams) {
      const state = fold(facts, stream, asOf)
      if (state) into[stream] = state
    }
  }
  await load('batch', foldBatch, stores.batches)
  await load('instrument', foldInstrument, stores.instruments)
  await load('person', foldPerson, stores.persons)
  return stores
}

function choicesOf(judge: JudgeContext, today: CalendarDay): Pick<CaptureView, 'batches' | 'instruments' | 'persons'> {
  return {
    batches: Object.values(judge.batches).map((batch) => {
      const isExpired = batch.expiresOn !== null && batch.expiresOn < today
      const why = batch.recalled
        ? 'recalled'
        : batch.isQuarantined
          ? 'in quarantine'
          : isExpired
            ? `expired on ${batch.expiresOn}`
            : null
      return {
        id: batch.stream,
        label: `${batch.number} ${batch.received.product}`,
        role: batch.received.role,
        note: why ?? (batch.expiresOn ? `in date to ${batch.expiresOn}` : 'no expiry stated'),
        isBarred: why !== null,
      }
    }),
    instruments: Object.values(judge.instruments).map((one) => {
      const inForce = one.certificates.filter((certificate) => certificate.body.dueOn >= today).at(-1)
      const why = one.isQuarantined ? 'in quarantine' : inForce ? null : 'no certificate in date today'
      return {
        id: one.stream,
        label: `${one.number} ${one.kind}`,
        measures: [],
        note: why ?? `certificate ${inForce?.body.certificate} in date to ${inForce?.body.dueOn}`,
        isBarred: why !== null,
      }
    }),
    persons: Object.values(judge.persons).map((person) => ({
      id: personIdOf(person),
      label: `${person.name}, ${person.title}`,
    })),
  }
}

function personIdOf(person: PersonState): PersonId {
  return streamName(person.stream) as PersonId
}
