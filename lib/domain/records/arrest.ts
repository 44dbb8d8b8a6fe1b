import * as z from 'zod'
import { measuredIn } from '../reading'
import { Moment } from '../time'
import {
  BatchRef,
  Degrees,
  InstrumentRef,
  Length,
  MarkedReadings,
  Mass,
  mixFields,
  Person,
  Pressure,
  Remark,
  Text,
  YesNo,
} from './common'

/** Point 08, plug, plate and band. Band needed = girth + build + tail; plug amount against hole size. */
export const PlugPlateBand = z.lazy(() =>
  z.strictObject({
    method: z.literal('plug, plate and band'),
    girths: z.array(Length).min(1).max(6),
    bandBatch: BatchRef.optional(),
    bandThickness: Length,
    bandCut: Length,
    bandTail: Length,
    bandBuild: Length,
    plateThickness: Length,
    plateSize: Text.optional(),
    puttyBatch: BatchRef,
    puttyUsed: measuredIn('mm3'),
    kneadStart: Moment,
    kneadEnd: Moment,
    oneColour: YesNo,
    ambient: Degrees,
    pressedAt: Moment,
    bandTightAt: Moment,
    judgedHardAt: Moment.optional(),
    overHole: YesNo,
    surplusCut: YesNo,
    nonSparkingAsked: YesNo,
    nonSparkingTools: YesNo,
  }),
)

/** Other kinds of temporary arrest. */
export const OtherArrest = z.lazy(() =>
  z.strictObject({
    method: z.enum(['tapered plug', 'clamp', 'stop-off putty', 'pressure taken off']),
    batch: BatchRef.optional(),
    dimensions: Text.optional(),
    placedAt: Moment,
  }),
)

/** Point 08: temporary leak arrest. */
export const ArrestRecord = z.lazy(() =>
  z.strictObject({
    type: z.literal('arrest'),
    arrest: z.discriminatedUnion('method', [PlugPlateBand, OtherArrest]),
    pressureThen: Pressure,
    leftInside: YesNo,
    placedBy: Person,
    remark: Remark.optional(),
  }),
)

/** Point 09: leak-arrest confirmation, a timed watch. Drips are entered as they are seen. */
export const ArrestWatchRecord = z.lazy(() =>
  z.strictObject({
    type: z.literal('arrest-watch'),
    startedAt: Moment,
    endedAt: Moment.optional(),
    pressure: Pressure,
    wipeDry: YesNo.optional(),
    dripSeenAt: Moment.optional(),
    freeOfFlashRust: YesNo.optional(),
    gauge: InstrumentRef.optional(),
    watchedBy: Person,
    remark: Remark.optional(),
  }),
)

/** Point 10: filler mix. */
export const FillerMixRecord = z.lazy(() =>
  z.strictObject({ type: z.literal('filler-mix'), ...mixFields(), remark: Remark.optional() }),
)

/** Point 11: filler placed; height before and after at the same marks. The thickness is after - before at each mark. */
export const FillerThicknessRecord = z.lazy(() =>
  z.strictObject({
    type: z.literal('filler-thickness'),
    mixNo: z.string().min(1).max(12),
    placedAt: Moment,
    placedBy: Person,
    holeMark: z.string().min(1).max(16),
    before: MarkedReadings,
    after: MarkedReadings,
    measuredAt: Moment,
    smooth: YesNo,
    coveredLength: Length.optional(),
    coveredGirth: Length.optional(),
    instrument: InstrumentRef,
    remark: Remark.optional(),
  }),
)

/** Point 12: filler cure, hardness on the filler, no weep. */
export const FillerCureRecord = z.lazy(() =>
  z.strictObject({
    type: z.literal('filler-cure'),
    takenAt: Moment,
    temp: Degrees.optional(),
    readings: MarkedReadings,
    noWeep: YesNo,
    weepAt: Text.optional(),
    instrument: InstrumentRef,
    remark: Remark.optional(),
  }),
)

/** A weep or leak seen after arrest: what falls follows from the plan's table. */
export const WeepRecord = z.lazy(() =>
  z.strictObject({
    type: z.literal('weep'),
    seenAt: Moment,
    place: Text,
    spare: Mass.optional(),
    remark: Remark.optional(),
  }),
)
