import { PersonId, type StreamId, streamKind, streamName } from '@/lib/domain/facts/fact'
import { foldBatch } from '@/lib/domain/fold/fold-batch'
import { foldInstrument } from '@/lib/domain/fold/fold-instrument'
import { foldPerson } from '@/lib/domain/fold/fold-person'
import { foldProject, type ProjectState } from '@/lib/domain/fold/fold-project'
import { ofKind } from '@/lib/domain/fold/order-facts'
import type { AttemptState, PhotoState } from '@/lib/domain/fold/repair-state'
import type { BatchState, InstrumentState, PersonState } from '@/lib/domain/fold/store-states'
import { instantOf } from '@/lib/domain/time'
import type { DossierInput } from './dossier-input'
import type { CodeRows } from './draw-code'

export type PlacedPhoto = { photo: PhotoState; attempt: Pick<AttemptState, 'point' | 'attempt'> }
export type NumberedPhoto = PlacedPhoto & { no: number; isReadable: boolean }

/** The input with what sections look up again and again: streams as they stand, names, photos by number. */
export type DossierContext = DossierInput & {
  /** The code that leads to where the file is checked; null for a file without a seal. */
  checkCode: CodeRows | null
  persons: ReadonlyMap<StreamId, PersonState>
  instruments: ReadonlyMap<StreamId, InstrumentState>
  batches: ReadonlyMap<StreamId, BatchState>
  project: ProjectState | null
  photos: readonly NumberedPhoto[]
  personName: (person: string) => string
  streamTitle: (stream: string) => string
}

/** Gather the context. @param unreadable digests of renditions whose stored bytes cannot be used @param checkCode the code of the seal's address */
export function dossierContext(
  input: DossierInput,
  unreadable: ReadonlySet<string>,
  checkCode: CodeRows | null,
): DossierContext {
  const { facts, state } = input
  const streams = [...new Set<StreamId>(facts.map((fact) => fact.stream))].sort()
  const folded = <S>(
    kind: string,
    fold: (facts: DossierInput['facts'], stream: StreamId, asOf: string) => S | null,
  ): Map<StreamId, S> =>
    new Map(
      streams
        .filter((stream) => streamKind(stream) === kind)
        .flatMap((stream) => {
          const one = fold(facts, stream, state.asOf)
          return one === null ? [] : [[stream, one] as const]
        }),
    )
  const persons = folded('person', foldPerson)
  const instruments = folded('instrument', foldInstrument)
  const batches = folded('batch', foldBatch)
  const personName = (person: string): string => [...persons.values()].find((one) => one.id === person)?.name ?? person
  const streamTitle = (stream: string): string => titleOf(stream as StreamId, { instruments, batches, personName })
  return {
    ...input,
    checkCode,
    persons,
    instruments,
    batches,
    project: foldProject(facts, state.opened.body.project, state.asOf),
    photos: photosOf(input).map((one, index) => ({
      ...one,
      no: index + 1,
      isReadable: !unreadable.has(one.photo.fact.body.photo.rendition.sha256),
    })),
    personName,
    streamTitle,
  }
}

function titleOf(
  stream: StreamId,
  known: {
    instruments: Map<StreamId, InstrumentState>
    batches: Map<StreamId, BatchState>
    personName: (person: string) => string
  },
): string {
  if (streamKind(stream) === 'person') return known.personName(PersonId.parse(streamName(stream)))
  return known.instruments.get(stream)?.number ?? known.batches.get(stream)?.number ?? streamName(stream)
}

/** Whether a picture is the scan of a tally sheet and no photo of the work. */
export function isScan({ photo }: Pick<PlacedPhoto, 'photo'>): boolean {
  return photo.fact.body.scan !== undefined
}

/** Every photo of the repair: those of the plan's points in order, then those attached where the plan has no such point or attempt, then the scans of tally sheets. */
export function photosOf({ state, facts }: DossierInput): PlacedPhoto[] {
  const attempts = state.points.flatMap((point) => point.attempts)
  const shown = attempts.flatMap((attempt) => inOrder(attempt.photos).map((photo) => ({ photo, attempt })))
  const known = new Set(shown.map(({ photo }) => photo.fact.id))
  const others = ofKind(facts, 'photo-attached')
    .filter((fact) => fact.stream === state.stream && !known.has(fact.id))
    .map((fact): PhotoState => ({ fact, judged: null, flags: [] }))
  return [
    ...shown,
    ...[
      ...inOrder(others.filter((photo) => !isScan({ photo }))),
      ...inOrder(others.filter((photo) => isScan({ photo }))),
    ].map((photo) => ({ photo, attempt: { point: photo.fact.body.point, attempt: photo.fact.body.attempt } })),
  ]
}

function inOrder(photos: readonly PhotoState[]): PhotoState[] {
  return [...photos].sort(
    (a, b) => instantOf(a.fact.observedAt) - instantOf(b.fact.observedAt) || (a.fact.id < b.fact.id ? -1 : 1),
  )
}
