import * as z from 'zod'
import { measuredIn } from '../reading'
import { Moment } from '../time'
import { BatchRef, Clock, Degrees, InstrumentRef, Length, Mass, mixFields, Person, Remark, Text, YesNo } from './common'

/** Point 14: primer coat. */
export const PrimerRecord = z.lazy(() =>
  z.strictObject({
    type: z.literal('primer'),
    batch: BatchRef,
    mass: Mass.optional(),
    brushedAt: Moment,
    brushedBy: Person,
    place: Text.optional(),
    remark: Remark.optional(),
  }),
)

/** Point 14, wet lay-up: one resin mix. */
export const ResinMixRecord = z.lazy(() =>
  z.strictObject({ type: z.literal('resin-mix'), ...mixFields(), remark: Remark.optional() }),
)

/** Point 14, wet lay-up: one ply. */
export const PlyRecord = z.lazy(() =>
  z.strictObject({
    type: z.literal('ply'),
    plyNo: z.int().min(1).max(99),
    fabric: BatchRef,
    mixNo: z.string().min(1).max(12),
    startedAt: Moment,
    endedAt: Moment,
    placedBy: Person,
    supervisedBy: Person.optional(),
    width: Length,
    startClock: Clock,
    overlap: Length,
    jointOffset: Length.optional(),
    tension: Text,
    wetOut: YesNo,
    airRolled: YesNo,
    remark: Remark.optional(),
  }),
)

/** Point 14: plies counted by one person; the plan asks for two. */
export const PlyCountRecord = z.lazy(() =>
  z.strictObject({
    type: z.literal('ply-count'),
    plies: measuredIn('plies'),
    countedBy: Person,
    countedAt: Moment,
  }),
)

/** Point 14, water-activated tape: one roll. Working time runs from soak start to the end of that roll's wrap. */
export const TapeRollRecord = z.lazy(() =>
  z.strictObject({
    type: z.literal('tape-roll'),
    rollNo: z.int().min(1).max(99),
    batch: BatchRef,
    sealedUntilUse: YesNo,
    soakStart: Moment,
    soakSeconds: measuredIn('s'),
    water: Degrees,
    wrapStart: Moment,
    wrapEnd: Moment,
    surface: Degrees,
    wrappedBy: Person,
    supervisedBy: Person.optional(),
    tensionKept: YesNo,
    usedUp: YesNo,
    squeezed: YesNo,
    noGap: YesNo,
    instrument: InstrumentRef.optional(),
    remark: Remark.optional(),
  }),
)

/** Point 14, water-activated tape: the wrap as a whole. Overlap follows from tape width and pitch. */
export const TapeWrapRecord = z.lazy(() =>
  z.strictObject({
    type: z.literal('tape-wrap'),
    tapeWidth: Length,
    pitches: z.array(Length).min(1).max(20),
    passes: z.int().min(1).max(40),
    startBeforeLeak: Length,
    endAfterLeak: Length,
    measuredAt: Moment,
    measuredBy: Person,
    remark: Remark.optional(),
  }),
)

/** Point 15: cure by logger or by keyed probe readings. Each probe is judged; the coldest governs. */
export const CureRecord = z.lazy(() =>
  z.strictObject({
    type: z.literal('cure'),
    logger: InstrumentRef.optional(),
    heatSource: Text.optional(),
    startedAt: Moment,
    endedAt: Moment,
    probes: z
      .array(
        z.strictObject({
          place: Text,
          clock: Clock,
          series: z
            .array(z.strictObject({ at: Moment, reading: Degrees }))
            .min(1)
            .max(5000),
        }),
      )
      .min(1)
      .max(12),
    /** Air beside the repair, where it was logged: shown, never judged as a probe. */
    ambient: z
      .array(z.strictObject({ at: Moment, reading: Degrees }))
      .min(1)
      .max(5000)
      .optional(),
    interrupted: YesNo,
    postCure: YesNo,
    remark: Remark.optional(),
  }),
)
