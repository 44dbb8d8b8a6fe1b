import type { FactId, PersonId, StreamId } from '../facts/fact'
import type { FactOf } from '../facts/fact-kinds'
import type { CriterionResult, Question, VerdictKind } from '../judge/verdict'
import type { Plan, PlanPoint } from '../plan'
import type { PointRecord, RecordOf } from '../records/record'
import type { Participation, Party } from '../roles'
import type { PointNo, Specification } from '../specification'
import type { CalendarDay, Moment } from '../time'
import type { ConflictState } from './conflict-state'
import type { NonconformanceState } from './nonconformance-state'
import type { Remarkable } from './remarkable'
import type { TranscriptionState } from './transcription-states'

/** A record as it stands after corrections; the record as first keyed and each correction stay beside it. */
export type RecordState = {
  fact: FactOf<'recorded'>
  record: PointRecord
  corrections: FactOf<'corrected'>[]
  /** Another record was chosen to govern over this one. */
  overruledBy: FactId | null
  late: boolean
  /** Signatures that cover this record and all its corrections. */
  signedBy: FactId[]
  transcription: TranscriptionState | null
}

export type SignatureState = {
  fact: FactOf<'signed'>
  /** `stands` while every covered fact is as signed; `broken` once a correction of one is not covered, or where the device's key does not speak for the signer. */
  state: 'stands' | 'broken'
  brokenBy: FactId | null
}

export type ReleaseStateName = 'valid' | 'used' | 'lapsed' | 'withdrawn' | 'superseded' | 'in question'

export type ReleaseState = {
  fact: FactOf<'released'>
  state: ReleaseStateName
  /** When it fell, why and by whom; history stays readable. */
  fell: { at: Moment; cause: string; by: PersonId | null; fact: FactId | null } | null
  /** Received after the step that relied on it though observed before. */
  receivedAfterUse: boolean
}

export type PhotoFlag = {
  kind: 'exact copy' | 'near copy' | 'no original' | 'old metadata' | 'clock differs'
  other?: { repair: StreamId; fact: FactId; point: PointNo }
  decision: FactOf<'likeness-judged'> | null
}

export type PhotoState = { fact: FactOf<'photo-attached'>; judged: FactOf<'photo-judged'> | null; flags: PhotoFlag[] }

/** State of an attempt at a point, in words for screens. */
export type AttemptStateName =
  | 'closed' // blocked by earlier points
  | 'open' // nothing recorded yet
  | 'in progress'
  | 'submitted'
  | 'refused'
  | 'released'
  | 'partly released'
  | 'lapsed'
  | 'withdrawn'
  | 'in question'
  | 'passed without release'
  | 'not applicable'
  | 'superseded' // a later attempt was opened

export type AttemptState = {
  point: PointNo
  attempt: number
  state: AttemptStateName
  records: RecordState[]
  photos: PhotoState[]
  /** Demands that photos on this device answer, one each, before the record has them. */
  photosToCome: string[]
  /** Scans of tally sheets: pictures of paper, no photos of the work. */
  scans: FactOf<'photo-attached'>[]
  signatures: SignatureState[]
  submitted: FactOf<'submitted'> | null
  /** Submitted, and no record or correction of it came after. */
  isSubmitted: boolean
  refusals: FactOf<'release-refused'>[]
  releases: ReleaseState[]
  criteria: CriterionResult[]
  verdict: VerdictKind
  questions: Question[]
  conceded: StreamId | null
  notApplicable: FactOf<'marked-not-applicable'> | null
  opened: FactOf<'attempt-opened'> | null
  /** Started although a hold before it was not released at that time. */
  passedWithoutRelease: { hold: PointNo; at: Moment; by: FactId }[]
  /** What a release still lacks, each in one sentence. */
  missing: string[]
  /** When the first and last thing was observed. */
  firstAt: Moment | null
  lastAt: Moment | null
}

export type PointState = {
  plan: PlanPoint
  no: PointNo
  attempts: AttemptState[]
  /** The latest attempt. */
  current: AttemptState
  /** Earlier points that are not released and valid (or used in time). Empty: the point is open. */
  blockedBy: PointNo[]
  /** Parties that must release (H) and have not. */
  awaiting: Party[]
  participation: Record<Party, Participation | null>
}

export type WindowState = {
  criterion: string
  title: string
  point: PointNo
  attempt: number
  state: 'not started' | 'running' | 'warning' | 'met' | 'lapsed' | 'not proven'
  startedAt: Moment | null
  endedAt: Moment | null
  /** When it ends (maximum) or is met (minimum). */
  endsAt: Moment | null
  clause: string
}

export type RepairStatus =
  | 'planned'
  | 'in progress'
  | 'on hold'
  | 'accepted'
  | 'accepted under concession'
  | 'in service'
  | 'overdue'
  | 'life extended'
  | 'removed'
  | 'abandoned'

/** One use of a batch, instrument or person in a repair, for traces. */
export type Use = {
  repair: StreamId
  point: PointNo
  attempt: number
  fact: FactId
  at: Moment
  of: StreamId
  role: string
  /** For a batch: mix, roll or ply it went into, and how much where weighed. */
  into?: string
  amount?: { digits: number; scale: number; unit: string }
  /** Its record was set aside for another that governs: it stays in traces and counts in no balance. */
  overruled?: true
}

export type AcceptanceState = {
  fact: FactOf<'accepted'>
  signatures: SignatureState[]
  lifeYears: string
  lifeEndsOn: CalendarDay
  nextInspectionOn: CalendarDay
  isOverdue: boolean
  openConditions: { text: string; owner: PersonId; dueOn: CalendarDay }[]
}

export type IssueState = { fact: FactOf<'dossier-issued'>; transmitted: FactOf<'transmitted'>[] }

export type RepairState = {
  rules: string
  asOf: Moment
  stream: StreamId
  number: string
  opened: FactOf<'repair-opened'>
  specification: {
    stream: StreamId
    revision: number
    body: Specification
    issued: FactOf<'specification-issued'>
  } | null
  /** Every revision in force at some time of this repair, oldest first. */
  specificationRevisions: FactOf<'specification-issued'>[]
  plan: { stream: StreamId; revision: number; body: Plan } | null
  planRevisions: FactOf<'plan-issued'>[]
  design: RecordOf<'design'> | null
  defect: RecordOf<'defect'> | null
  points: PointState[]
  windows: WindowState[]
  nonconformances: NonconformanceState[]
  acceptance: AcceptanceState | null
  status: RepairStatus
  /** True when a fact came after the last issued dossier that it does not show. */
  revisionDue: boolean
  issues: IssueState[]
  uses: Use[]
  /** What an index must list as missing, each in one sentence with its point. */
  missing: { point: PointNo | null; text: string }[]
  conflicts: ConflictState[]
  notices: { fact: FactOf<'notice-sent'>; answer: FactOf<'notice-answered'> | null }[]
  waivers: FactOf<'waived'>[]
  queries: { fact: FactOf<'query-raised'>; answer: FactOf<'query-answered'> | null }[]
  remarkable: Remarkable[]
}
