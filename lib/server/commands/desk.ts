import type { FactId, PersonId, Sha256, StreamId } from '@/lib/domain/facts/fact'
import type { BodyOf, Fact, FactKind, FactOf } from '@/lib/domain/facts/fact-kinds'
import type { RepairState } from '@/lib/domain/fold/repair-state'
import type { Result } from '@/lib/domain/result'
import type { CalendarDay, Moment } from '@/lib/domain/time'
import type { Actor } from '@/lib/server/auth/actor'
import type { Store } from '@/lib/server/store/store'
import type { Entry } from './entry'
import type { Refusal } from './refusal'

/** What a command answers once its facts are kept: the stream and its new length, the first fact, and all facts of the batch. */
export type Kept = { stream: StreamId; length: number; fact: FactId; facts: FactId[] }
export type Head = { stream: StreamId; length: number }
/** A stream as kept: its facts in order, with the digest of each one's exact bytes. */
export type KeptStream = { facts: Fact[]; sha256Of: ReadonlyMap<FactId, Sha256> }

/** A fact about to be made. Who observed and entered it is the actor, unless another person acts at the same screen, or it is a copy of what another person wrote on paper (`observedBy`). */
export type FactDraft<K extends FactKind> = {
  stream: StreamId
  kind: K
  body: BodyOf<K>
  entry?: Entry | undefined
  by?: PersonId
  observedBy?: PersonId | undefined
  offset: string | null
}

/**
 * What a command works at: the actor, the time, and the records of the actor's tenant. A stream of another tenant is not there: null.
 * `append` keeps all facts or none; it refuses `heads-moved` when a named stream is not as long as it was seen, and `id-taken`.
 */
export type Desk = {
  actor: Actor
  store: Store
  /** Now, at a place's UTC offset; at the store's own when none is known. */
  now(offset: string | null): Moment
  today(offset: string | null): CalendarDay
  streamOf(stream: StreamId): Promise<KeptStream | null>
  factsOf(stream: StreamId): Promise<Fact[] | null>
  /** Number of facts in each stream, 0 where there is none. */
  headsOf(streams: readonly StreamId[]): Promise<Head[]>
  stateOf(repair: StreamId): Promise<RepairState | null>
  make<K extends FactKind>(draft: FactDraft<K>): FactOf<K>
  append(facts: readonly Fact[], heads: readonly Head[]): Promise<Result<Kept, Refusal>>
}
