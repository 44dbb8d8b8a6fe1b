import * as z from 'zod'
import { Decimal } from '../decimal'
import { INVALIDATING_EVENTS } from '../plan'
import { BatchRef, Clock, Mark, Reason, Remark, Text } from '../records/common'
import { PointRecord } from '../records/record'
import { MEANINGS, PARTIES, ROLES } from '../roles'
import { PointNo } from '../specification'
import { CalendarDay, Moment } from '../time'
import { AtPoint, Attempt } from './at-point'
import { SignatureMethod } from './device-proof'
import { FactId, PersonId, Sha256, StreamId } from './fact'
import { PHOTO_BODIES } from './photo-bodies'
import { Transcribed, TranscriptionChecked } from './transcription-bodies'

const Party = z.enum(PARTIES)

/** What a release covers: the whole point, part of the area, or the work up to a named step. */
export const Scope = z.lazy(() =>
  z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('whole') }),
    z.strictObject({ kind: z.literal('area'), area: Text, marks: z.array(Mark).max(400).optional() }),
    z.strictObject({ kind: z.literal('up-to-step'), step: Text, untilPoint: PointNo.optional() }),
  ]),
)

export type Scope = z.infer<typeof Scope>

/** Heads of the streams that a decision saw: stream and number of facts in it. */
export const Heads = z.lazy(() => z.array(z.strictObject({ stream: StreamId, length: z.int().min(0) })).max(200))
export type Heads = z.infer<typeof Heads>

/** Bodies of the facts of a repair's stream, by kind. */
export const REPAIR_BODIES = {
  'repair-opened': z.lazy(() =>
    z.strictObject({
      number: Text,
      project: StreamId,
      line: Text,
      lineTitle: Text,
      specification: StreamId,
      plan: StreamId,
      datum: Text,
      stationFromDatum: Decimal,
      clock: Clock,
      clockView: Text,
      flow: Text.optional(),
      geometry: z.enum(['straight', 'bend', 'tee', 'nozzle']),
      arrest: Text,
      wrap: z.enum(['wet lay-up', 'water-activated tape']),
      contract: Text.optional(),
      className: Text.optional(),
    }),
  ),
  recorded: z.lazy(() =>
    z.strictObject({
      ...AtPoint,
      record: PointRecord,
      transcribed: Transcribed.optional(),
    }),
  ),
  'transcription-checked': TranscriptionChecked,
  /** Own error in what was keyed: never a second measurement, that is a new record. `path` leads into the record. */
  corrected: z.lazy(() =>
    z.strictObject({
      target: FactId,
      changes: z
        .array(
          z.strictObject({
            path: z
              .array(z.union([z.string(), z.int()]))
              .min(1)
              .max(8),
            from: z.json(),
            to: z.json(),
          }),
        )
        .min(1)
        .max(60),
      reason: Reason,
    }),
  ),
  'attempt-opened': z.lazy(() =>
    z.strictObject({
      points: z.array(PointNo).min(1).max(30),
      attempt: Attempt,
      reason: Reason,
      nonconformance: StreamId.optional(),
    }),
  ),
  ...PHOTO_BODIES,
  submitted: z.lazy(() => z.strictObject({ ...AtPoint, heads: Heads })),
  released: z.lazy(() =>
    z.strictObject({ ...AtPoint, party: Party, scope: Scope, heads: Heads, remark: Remark.optional() }),
  ),
  'release-refused': z.lazy(() => z.strictObject({ ...AtPoint, party: Party, reason: Reason, heads: Heads })),
  'release-withdrawn': z.lazy(() =>
    z.strictObject({ release: FactId, cause: Text, reason: Reason, followsFrom: FactId.optional() }),
  ),
  /** Something that makes releases fall by the plan's table. `area` when only part of the surface is touched. */
  'event-noted': z.lazy(() =>
    z.strictObject({ event: z.enum(INVALIDATING_EVENTS), area: Text.optional(), remark: Remark }),
  ),
  signed: z.lazy(() =>
    z.strictObject({
      meaning: z.enum(MEANINGS),
      ...AtPoint,
      role: z.enum(ROLES),
      name: Text,
      party: Party,
      covers: z
        .array(z.strictObject({ fact: FactId, sha256: Sha256 }))
        .min(1)
        .max(600),
      /** Digests of original photos covered whose facts were not made yet: those captured on the device that signed. */
      photos: z.array(Sha256).max(200).optional(),
      method: SignatureMethod,
    }),
  ),
  'marked-not-applicable': z.lazy(() => z.strictObject({ ...AtPoint, reason: Reason })),
  /**
   * What a person rules about a conflict that a sync noted: a decision made without a network `stands` or `falls`; `seen` where nothing was applied and nothing is to be decided.
   */
  'conflict-settled': z.lazy(() =>
    z.strictObject({
      conflict: FactId,
      ruling: z.enum(['decision stands', 'decision falls', 'seen']),
      reason: Reason,
    }),
  ),
  'governs-chosen': z.lazy(() =>
    z.strictObject({ ...AtPoint, record: FactId, over: z.array(FactId).min(1).max(20), reason: Reason }),
  ),
  'stands-or-redo': z.lazy(() =>
    z.strictObject({
      point: PointNo,
      revision: z.int().min(0),
      of: StreamId,
      decision: z.enum(['stands', 'redo']),
      reason: Reason,
    }),
  ),
  /** Decision per repair after an impact search; recorded even when it is "no effect". */
  'impact-decided': z.lazy(() =>
    z.strictObject({
      cause: FactId,
      points: z.array(z.strictObject(AtPoint)).max(60),
      decision: z.enum(['no effect', 're-measured', 'recomputed, stands', 'rework', 'nonconformance raised']),
      evidence: z.array(FactId).max(60),
      reason: Reason,
    }),
  ),
  'notice-sent': z.lazy(() =>
    z.strictObject({ point: PointNo, to: PersonId, party: Party, how: Text, sentAt: Moment, for: Moment }),
  ),
  'notice-answered': z.lazy(() =>
    z.strictObject({
      notice: FactId,
      outcome: z.enum(['attended', 'not attended, proceeded', 'postponed']),
      waitedMinutes: Decimal.optional(),
      clause: Text.optional(),
    }),
  ),
  waived: z.lazy(() =>
    z.strictObject({ ...AtPoint, party: Party, by: PersonId, writing: Text, sha256: Sha256.optional() }),
  ),
  accepted: z.lazy(() =>
    z.strictObject({
      kind: z.enum(['accepted', 'accepted under concession', 'accepted on condition']),
      lifeYears: Decimal,
      lifeFrom: CalendarDay,
      nextInspectionOn: CalendarDay,
      restrictions: z.array(Text).max(20),
      concession: StreamId.optional(),
      conditions: z.array(z.strictObject({ text: Text, owner: PersonId, dueOn: CalendarDay })).max(20),
      heads: Heads,
    }),
  ),
  'condition-discharged': z.lazy(() =>
    z.strictObject({ acceptance: FactId, condition: z.int().min(0), evidence: Text }),
  ),
  'life-reviewed': z.lazy(() => z.strictObject({ lifeYears: Decimal, nextInspectionOn: CalendarDay, reason: Reason })),
  'query-raised': z.lazy(() => z.strictObject({ number: Text, question: Text, point: PointNo.optional() })),
  'query-answered': z.lazy(() =>
    z.strictObject({ query: FactId, answer: Text, binding: z.boolean(), effect: Remark.optional() }),
  ),
  'repair-held': z.lazy(() => z.strictObject({ state: z.enum(['on hold', 'resumed', 'abandoned']), reason: Reason })),
  disposed: z.lazy(() => z.strictObject({ sha256: Sha256, why: Reason, legalHoldChecked: z.boolean() })),
  'material-used': z.lazy(() =>
    z.strictObject({ ...AtPoint, batch: BatchRef, amount: z.string().max(40), remark: Remark.optional() }),
  ),
} as const
