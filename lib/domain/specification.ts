import * as z from 'zod'
import { Decimal } from './decimal'
import { Unit } from './reading'
import { RECORD_TYPES, type RecordType } from './records/record'

export const PointNo = z
  .string()
  .regex(/^\d{2}$/, 'a point number such as 05')
  .brand('PointNo')
export type PointNo = z.infer<typeof PointNo>

/** Values of the design sheet that a limit may stand on. */
export const DESIGN_VALUES = [
  'plies',
  'minThickness',
  'overlapEachSide',
  'taper',
  'totalLength',
  'testPressure',
  'designPressure',
  'designDiameter',
  'designWall',
  'designTemp',
  'defectLength',
] as const

/** A limit: a value of the specification, or a share of a value of the design sheet in force. */
export const Limit = z.lazy(() =>
  z.discriminatedUnion('from', [
    z.strictObject({ from: z.literal('specification'), value: Decimal, unit: Unit }),
    z.strictObject({ from: z.literal('design'), value: z.enum(DESIGN_VALUES), factor: Decimal.optional() }),
  ]),
)
export type Limit = z.infer<typeof Limit>

/** A table of times against temperature. `step`: valid up to the row's temperature. `interpolated`: by Arrhenius between the rows. */
export const TimeTable = z.lazy(() =>
  z.strictObject({
    kind: z.enum(['step', 'interpolated']),
    rows: z
      .array(z.strictObject({ temp: Decimal, minutes: Decimal }))
      .min(1)
      .max(30),
  }),
)
export type TimeTable = z.infer<typeof TimeTable>

/** Quantity names are those of lib/domain/judge/yield: e.g. `salts`, `profile`, `dew-margin`, `filler-on-ring`, `hardness`, `laminate-thickness`. */
const Quantity = z.string().regex(/^[a-z][a-z0-9-]+$/)
const EventName = z.string().regex(/^[a-z][a-z0-9-]+$/)
const Bounds = { min: Limit.optional(), max: Limit.optional() }

/**
 * How one criterion is judged. Each reading, mean and count are separate criteria. A criterion judges the readings of one point's attempt
 * unless it says otherwise.
 */
export const Rule = z.lazy(() =>
  z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('each'), quantity: Quantity, ...Bounds }),
    z.strictObject({ kind: z.literal('mean'), quantity: Quantity, ...Bounds }),
    z.strictObject({ kind: z.literal('count'), quantity: Quantity, atLeast: z.int().min(1) }),
    z.strictObject({ kind: z.literal('grade'), grades: z.array(z.string()).min(1) }),
    z.strictObject({ kind: z.literal('yes'), flag: Quantity }),
    z.strictObject({ kind: z.literal('no'), flag: Quantity }),
    /** Minutes from a start event to an end event, on observed times; `latest` takes the last start before the end. */
    z.strictObject({
      kind: z.literal('window'),
      start: EventName,
      end: EventName,
      startPoint: PointNo.optional(),
      endPoint: PointNo.optional(),
      minMinutes: Decimal.optional(),
      maxMinutes: Decimal.optional(),
      pick: z.enum(['first', 'latest']).default('first'),
    }),
    /** Part B for 100 of part A by mass, each mix. */
    z.strictObject({ kind: z.literal('ratio'), partBPer100: Decimal, tolerance: Decimal }),
    /** Working time of each mix or roll at its own temperature. */
    z.strictObject({
      kind: z.literal('working-time'),
      table: TimeTable,
      of: z.enum(['filler-mix', 'resin-mix', 'tape-roll']),
    }),
    /** Plug judged hard only after the table's time at ambient. */
    z.strictObject({ kind: z.literal('hardening-time'), table: TimeTable }),
    z.strictObject({ kind: z.literal('plug-amount'), timesHoleVolume: Decimal }),
    z.strictObject({ kind: z.literal('band-length'), tailAtLeast: Decimal }),
    z.strictObject({ kind: z.literal('tape-start'), shareOfTotalLength: Decimal }),
    /** Unbroken time at or above a temperature, judged at the coldest probe; or equivalent cure over a table. */
    z.strictObject({
      kind: z.literal('cure-hold'),
      hours: Decimal,
      atLeastTemp: Decimal,
      probeAtColdest: z.boolean().default(false),
    }),
    z.strictObject({ kind: z.literal('cure-equivalent'), table: TimeTable }),
    /** Pressure drop after the correction for steel temperature; the correction's figures are the specification's. */
    z.strictObject({
      kind: z.literal('pressure-drop'),
      maxDrop: Decimal,
      minMinutes: Decimal,
      correction: z.strictObject({
        modulusMPa: Decimal,
        poisson: Decimal,
        alphaPerK: z.number(),
        betaPerK: z.number(),
        bulkModulusMPa: Decimal,
        ends: z.enum(['free', 'anchored']),
      }),
    }),
    z.strictObject({
      kind: z.literal('findings'),
      allowed: z.array(z.strictObject({ finding: z.string(), maxSize: Decimal })),
    }),
    z.strictObject({ kind: z.literal('design-envelope') }),
    z.strictObject({ kind: z.literal('plies'), countedBy: z.int().min(1) }),
    z.strictObject({ kind: z.literal('instruments-valid') }),
    z.strictObject({ kind: z.literal('batches-valid') }),
    z.strictObject({ kind: z.literal('persons-qualified') }),
    z.strictObject({ kind: z.literal('permit-valid') }),
    z.strictObject({ kind: z.literal('photos') }),
    z.strictObject({ kind: z.literal('order-of-facts') }),
  ]),
)
export type Rule = z.infer<typeof Rule>
export type RuleKind = Rule['kind']

/** One criterion with its clause. `title` is what the screen and dossier print. */
export const Criterion = z.lazy(() =>
  z.strictObject({
    id: z.string().regex(/^[A-Za-z0-9.-]{2,24}$/),
    point: PointNo,
    clause: z.string().min(1).max(40),
    title: z.string().min(3).max(120),
    rule: Rule,
  }),
)
export type Criterion = z.infer<typeof Criterion>

/** The body of one specification revision. */
export const Specification = z.lazy(() =>
  z.strictObject({
    number: z.string().min(2).max(40),
    title: z.string().min(3).max(160),
    arrest: z.array(z.string()).min(1),
    wrap: z.enum(['wet lay-up', 'water-activated tape']),
    decisionRule: z.enum(['simple acceptance', 'guard band']),
    dewPointFormula: z.string().max(120),
    noticeHours: Decimal,
    witnessWaitMinutes: Decimal,
    lifeCountsFrom: z.enum(['acceptance', 'application']),
    extendedCuresAllowed: z.int().min(0).max(9),
    tapRule: z.enum(['mean', 'median']).default('mean'),
    criteria: z
      .array(Criterion)
      .min(1)
      .max(300)
      .refine((list) => new Set(list.map((one) => one.id)).size === list.length, 'a criterion id appears twice'),
    notes: z.array(z.string().max(400)).max(40).default([]),
  }),
)
export type Specification = z.infer<typeof Specification>

export const RecordTypeName = z.enum(RECORD_TYPES as [RecordType, ...RecordType[]])
