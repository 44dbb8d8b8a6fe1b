import * as z from 'zod'
import { measuredIn, Reading } from '../reading'
import { Moment } from '../time'
import { Clock, Degrees, InstrumentRef, Length, Mark, MarkedReadings, Remark, Text, YesNo } from './common'

/** Point 05: cleanliness grade, dust, salts, oil and prepared length. */
export const CleanlinessRecord = z.lazy(() =>
  z.strictObject({
    type: z.literal('cleanliness'),
    grade: z.string().min(3).max(12),
    method: z.enum(['blast', 'power tool', 'hand tool', 'water jet']),
    dustClass: measuredIn('class'),
    salts: MarkedReadings,
    /** Salts by conductivity, one patch each: water, area, blank and reading as taken; `factor` is c in kg/(m²·S), 5 for a mixture of salts. */
    extractions: z
      .array(
        z.strictObject({
          mark: Mark,
          blank: measuredIn('uS/cm'),
          after: measuredIn('uS/cm'),
          water: measuredIn('ml'),
          area: measuredIn('mm2'),
          factor: measuredIn('ratio'),
        }),
      )
      .max(40)
      .optional(),
    oilFree: YesNo,
    preparedLeft: Length,
    preparedRight: Length,
    finishedAt: Moment,
    checkedAt: Moment,
    flashRust: z.enum(['none', 'L', 'M', 'H']).optional(),
    instrument: InstrumentRef.optional(),
    area: Text.optional(),
    remark: Remark.optional(),
  }),
)

/** Point 06: surface profile readings. */
export const ProfileRecord = z.lazy(() =>
  z.strictObject({
    type: z.literal('profile'),
    method: z.enum(['comparator', 'replica tape', 'stylus']),
    readings: MarkedReadings,
    film: measuredIn('um', 'mil').optional(),
    tapeGross: YesNo.optional(),
    tapeKept: Text.optional(),
    instrument: InstrumentRef,
    takenAt: Moment,
    remark: Remark.optional(),
  }),
)

/** Points 07 and 13: climate. Steel is taken at one or more places; the coldest governs. */
export const ClimateRecord = z.lazy(() =>
  z.strictObject({
    type: z.literal('climate'),
    takenAt: Moment,
    air: Degrees,
    humidity: measuredIn('%'),
    steel: z
      .array(z.strictObject({ clock: Clock, reading: Reading }))
      .min(1)
      .max(24),
    instrument: InstrumentRef,
    steelInstrument: InstrumentRef,
    change: Text.optional(),
    remark: Remark.optional(),
  }),
)

/** Point 13: pre-wrap re-check beside a fresh climate record. */
export const PreWrapRecord = z.lazy(() =>
  z.strictObject({
    type: z.literal('pre-wrap'),
    checkedAt: Moment,
    resweptAndWiped: YesNo,
    dry: YesNo,
    stationsMarked: YesNo,
    freeOfFlashRust: YesNo,
    remark: Remark.optional(),
  }),
)
