import * as z from 'zod'
import { MATERIAL_ROLES } from '../material-roles'
import { Measured, measuredIn, Reading } from '../reading'
import { BatchRef, Degrees, InstrumentRef, Person, Remark, Text, YesNo } from './common'

/** Point 03: one line per package looked at. A refused package is a record too. */
export const MaterialsRecord = z.lazy(() =>
  z.strictObject({
    type: z.literal('materials'),
    lines: z
      .array(
        z.strictObject({
          batch: BatchRef,
          role: z.enum(MATERIAL_ROLES),
          packageState: z.enum(['sound', 'damaged', 'opened']),
          labelRead: z.enum(['typed', 'scanned', 'scanned, completed by hand']).optional(),
          labelText: z.string().max(200).optional(),
          certificateMatches: YesNo,
          systemQualified: YesNo,
          storedMin: Degrees.optional(),
          storedMax: Degrees.optional(),
          decision: z.enum(['taken', 'refused']),
          reason: Text.optional(),
        }),
      )
      .min(1)
      .max(40),
    plannedUseOn: z.string().max(10).optional(),
    remark: Remark.optional(),
  }),
)

/** Point 04: instruments with their check on a reference piece, and the persons on the job. */
export const InstrumentsRecord = z.lazy(() =>
  z.strictObject({
    type: z.literal('instruments'),
    instruments: z
      .array(
        z.strictObject({
          instrument: InstrumentRef,
          certificate: Text,
          reference: Measured.optional(),
          read: Reading.optional(),
          tolerance: Measured.optional(),
          coverage: z.enum(['full scale', 'mid scale', 'none']),
          when: z.enum(['before', 'after']),
          decision: z.enum(['taken', 'refused']),
          reason: Text.optional(),
        }),
      )
      .max(40),
    persons: z
      .array(
        z.strictObject({
          person: Person,
          qualification: Text,
          task: z.enum(['applicator', 'supervisor', 'inspector']),
          supervisedBy: Person.optional(),
        }),
      )
      .max(40),
    remark: Remark.optional(),
  }),
)

/** Count of plies by a person, and other short statements made at a point. */
export const RemarkRecord = z.lazy(() =>
  z.strictObject({
    type: z.literal('remark'),
    text: Text,
    value: measuredIn('mm').optional(),
  }),
)
