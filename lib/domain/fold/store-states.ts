import type { FactId, PersonId, StreamId } from '../facts/fact'
import type { BodyOf, FactOf } from '../facts/fact-kinds'
import type { CalendarDay, Moment } from '../time'

/** A person, instrument or batch as its stream tells, for tables in screens and dossier. */
export type PersonState = {
  stream: StreamId
  id: PersonId
  name: string
  title: string
  party: string
  qualifications: FactOf<'qualification-recorded'>[]
}

/** A time in quarantine: from the fact that began it to the one that lifted it, whose moment is no longer in it. */
export type Quarantine = { from: Moment; to: Moment | null; fact: FactId; reason: string }

export type InstrumentState = {
  stream: StreamId
  number: string
  kind: string
  serial?: string
  asset?: string
  certificates: FactOf<'certificate-recorded'>[]
  checks: FactOf<'check-made'>[]
  foundWrong: FactOf<'found-wrong'>[]
  isQuarantined: boolean
  /** When it stood in quarantine, oldest first; the last one without an end stands yet. */
  quarantines: Quarantine[]
}

export type BatchState = {
  stream: StreamId
  number: string
  received: BodyOf<'batch-received'>
  expiresOn: CalendarDay | null
  isQuarantined: boolean
  /** When it stood in quarantine, oldest first; the last one without an end stands yet. */
  quarantines: Quarantine[]
  recalled: FactOf<'batch-recalled'> | null
}
