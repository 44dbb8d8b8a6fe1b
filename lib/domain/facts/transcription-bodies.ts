import * as z from 'zod'
import { Remark, Text } from '../records/common'
import { AtPoint } from './at-point'
import { FactId, PersonId, Sha256 } from './fact'

/** Number of a printed tally sheet: repair, point, attempt and time of printing, `MD-0042/11/2/260529-081205`. */
export const SheetNo = z
  .string()
  .max(120)
  .regex(/^[A-Za-z0-9][A-Za-z0-9._/-]*$/, 'a sheet number as printed')
export type SheetNo = z.infer<typeof SheetNo>

/** Says of an attached picture that it is the scan of a tally sheet and no photo of the work: it answers no demand for a photo. */
export const TallyScan = z.lazy(() => z.strictObject({ sheet: SheetNo.optional() }))

/**
 * Says of a record that it is the copy of what stood first on paper: the digest of the paper's scan, who keeps the paper and where. `checkedBy` is what the person said who entered it, and is no
 * check: that is the second person's own fact.
 */
export const Transcribed = z.lazy(() =>
  z.strictObject({
    tally: Sha256.optional(),
    sheet: SheetNo.optional(),
    keeper: Text,
    place: Text,
    checkedBy: PersonId.optional(),
  }),
)
export type Transcribed = z.infer<typeof Transcribed>

/** A second person compared a transcribed record, with the corrections named, with the scan of its paper. What differs is said. */
export const TranscriptionChecked = z.lazy(() =>
  z
    .strictObject({
      ...AtPoint,
      record: FactId,
      corrections: z.array(FactId).max(60),
      result: z.enum(['agrees', 'differs']),
      remark: Remark.optional(),
    })
    .refine((one) => one.result === 'agrees' || (one.remark ?? '').length >= 3, {
      path: ['remark'],
      message: 'say what differs',
    }),
)
