import * as z from 'zod'
import { PersonId, StreamId } from '../facts/fact'
import { measuredIn, Reading } from '../reading'
import { Moment } from '../time'

/** A mark on the pipe: station letter and clock position, `C-6`; filler marks are `row@clock` such as `+25@7`. */
export const Mark = z.string().regex(/^[A-Za-z0-9+@.−-]{1,16}$/, 'a mark such as C-6')
export type Mark = z.infer<typeof Mark>

export const Text = z.string().trim().min(1).max(400)
export const Remark = z.string().trim().max(1000)
/** Why somebody decided so. */
export const Reason = z.string().trim().min(3).max(600)
export const BatchRef = StreamId.refine((id) => id.startsWith('batch:'), 'a batch')
export const InstrumentRef = StreamId.refine((id) => id.startsWith('instrument:'), 'an instrument')
export const Clock = z.string().regex(/^(1[0-2]|[1-9])(\.5|:[0-5]\d)?$/, 'a clock position from 1 to 12')

/** One reading at a mark. Several taps give one reading by the rule that the specification states; they are kept. */
export const MarkedReading = z.lazy(() =>
  z.strictObject({
    mark: Mark,
    reading: Reading,
    taps: z.array(Reading).max(20).optional(),
    at: Moment.optional(),
  }),
)
export type MarkedReading = z.infer<typeof MarkedReading>

/** Readings over marks in the order keyed. A mark appears once: a second reading is a new record or a correction. */
export const MarkedReadings = z.lazy(() =>
  z
    .array(MarkedReading)
    .max(400)
    .refine((list) => new Set(list.map((one) => one.mark)).size === list.length, 'a mark appears twice'),
)

/** The chalk grid: stations by letter with their distance from the leak, and clock positions. */
export const Grid = z.lazy(() =>
  z.strictObject({
    stations: z
      .array(z.strictObject({ name: z.string().min(1).max(8), fromLeak: measuredIn('mm') }))
      .min(1)
      .max(60),
    clocks: z.array(Clock).min(1).max(24),
  }),
)
export type Grid = z.infer<typeof Grid>

export const YesNo = z.enum(['yes', 'no'])
export type YesNo = z.infer<typeof YesNo>

export const Degrees = measuredIn('degC', 'degF')
export const Pressure = measuredIn('MPa', 'bar', 'psi')
export const Mass = measuredIn('g', 'kg')
export const Length = measuredIn('mm', 'in')
export const Person = PersonId

/** One mix: two parts by mass or by volume, or a whole kit; the clock of its working time starts at `startedAt`. */
export const mixFields = () => ({
  mixNo: z.string().min(1).max(12),
  mixedBy: Person,
  checkedBy: Person.optional(),
  supervisedBy: Person.optional(),
  partA: z
    .array(z.strictObject({ batch: BatchRef, amount: measuredIn('g', 'kg', 'ml').optional() }))
    .min(1)
    .max(4),
  partB: z.array(z.strictObject({ batch: BatchRef, amount: measuredIn('g', 'kg', 'ml').optional() })).max(4),
  proportion: z.enum(['by mass', 'by volume', 'whole kit']),
  kits: measuredIn('kits').optional(),
  startedAt: Moment,
  endedAt: Moment.optional(),
  usedBy: Moment.optional(),
  resinTemp: Degrees.optional(),
  colourUniform: YesNo.optional(),
  spare: Mass.optional(),
  scale: InstrumentRef.optional(),
  scrapped: Text.optional(),
})
