import * as z from 'zod'
import { measuredIn } from '../reading'
import { CalendarDay, Moment } from '../time'
import {
  Clock,
  Degrees,
  Grid,
  InstrumentRef,
  Length,
  Mark,
  MarkedReadings,
  Person,
  Pressure,
  Remark,
  Text,
  YesNo,
} from './common'

/** Point 16: hardness over the full grid after cure. */
export const HardnessRecord = z.lazy(() =>
  z.strictObject({
    type: z.literal('hardness'),
    scale: z.enum(['ShoreD', 'ShoreA', 'Barcol']),
    grid: Grid,
    readings: MarkedReadings,
    takenAt: Moment,
    endedAt: Moment.optional(),
    temp: Degrees.optional(),
    instrument: InstrumentRef,
    remark: Remark.optional(),
  }),
)

/** Point 17: laminate thickness over the grid. */
export const ThicknessRecord = z.lazy(() =>
  z.strictObject({
    type: z.literal('thickness'),
    grid: Grid,
    readings: MarkedReadings,
    takenAt: Moment,
    instrument: InstrumentRef,
    remark: Remark.optional(),
  }),
)

export const FINDING_KINDS = [
  'blister',
  'wrinkle',
  'dry area',
  'pit',
  'delamination',
  'exposed fibre',
  'resin run',
] as const

/** Point 17: visual and tap findings, and the dimensions as built. No finding is a statement of its own. */
export const VisualRecord = z.lazy(() =>
  z.strictObject({
    type: z.literal('visual'),
    seenAt: Moment,
    tapTested: YesNo,
    findings: z
      .array(
        z.strictObject({
          kind: z.enum(FINDING_KINDS),
          place: Mark,
          size: Length,
          depth: Length.optional(),
          remark: Remark.optional(),
        }),
      )
      .max(100),
    noFindings: YesNo,
    totalLength: Length,
    taperLeft: Length,
    taperRight: Length,
    offset: Length.optional(),
    remark: Remark.optional(),
  }),
)

/** Point 18: pressure or leak test, or "not tested, line in service". */
export const PressureTestRecord = z.lazy(() =>
  z.strictObject({
    type: z.literal('pressure-test'),
    kind: z.enum(['pressure test', 'service test', 'not tested, line in service']),
    medium: Text,
    gauges: z.array(InstrumentRef).max(4),
    thermometer: InstrumentRef.optional(),
    readings: z
      .array(
        z.strictObject({
          at: Moment,
          pressure: Pressure,
          /** The second gauge at the same time, where two are read. */
          secondPressure: Pressure.optional(),
          steel: Degrees.optional(),
        }),
      )
      .max(60),
    noLeak: YesNo,
    remark: Remark.optional(),
  }),
)

/** Point 20: handover and label. */
export const HandoverRecord = z.lazy(() =>
  z.strictObject({
    type: z.literal('handover'),
    labelNo: Text,
    labelFixed: YesNo,
    labelReadable: YesNo,
    asset: Text.optional(),
    registerNo: Text,
    restrictions: z.array(Text).max(20),
    dossierRevision: z.int().min(0).optional(),
    handedAt: Moment,
    receivedBy: Text,
    remark: Remark.optional(),
  }),
)

/** Point 21: one in-service inspection. */
export const InServiceRecord = z.lazy(() =>
  z.strictObject({
    type: z.literal('in-service'),
    inspectedOn: CalendarDay,
    inspector: Person,
    access: Text.optional(),
    edges: z.enum(['sound', 'lifting', 'not seen']),
    tap: z.enum(['sound', 'dull area', 'not done']),
    weep: YesNo,
    colourChange: YesNo,
    impact: YesNo,
    wallBeyondEnds: MarkedReadings,
    pressure: Pressure.optional(),
    temp: Degrees.optional(),
    instrument: InstrumentRef.optional(),
    result: z.enum(['no change', 'changed, see remark', 'act now']),
    remark: Remark.optional(),
  }),
)

/** Point 22: removal. Two lengthwise cuts opposite each other, depth set so that the pipe is not touched. */
export const RemovalRecord = z.lazy(() =>
  z.strictObject({
    type: z.literal('removal'),
    removedOn: CalendarDay,
    why: Text,
    cuts: z
      .array(z.strictObject({ clock: Clock, depthSet: Length }))
      .min(1)
      .max(8),
    pipeTouched: YesNo,
    priedInHalves: YesNo,
    beneath: Text,
    plug: Text,
    wall: MarkedReadings,
    grid: Grid.optional(),
    instrument: InstrumentRef.optional(),
    samplesKept: Text.optional(),
    disposalRef: Text.optional(),
    remark: Remark.optional(),
  }),
)

/** Point 19: the closing checklist; the acceptance itself is a decision fact. */
export const ChecklistRecord = z.lazy(() =>
  z.strictObject({
    type: z.literal('checklist'),
    lines: z
      .array(z.strictObject({ text: Text, answer: z.enum(['yes', 'no', 'not applicable']), reason: Text.optional() }))
      .min(1)
      .max(40),
    labelFixed: YesNo,
    lifeYears: measuredIn('yr'),
    nextInspectionOn: CalendarDay,
    classText: Text.optional(),
    remark: Remark.optional(),
  }),
)
