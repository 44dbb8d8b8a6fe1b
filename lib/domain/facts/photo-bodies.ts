import * as z from 'zod'
import { Mark, Reason, Text } from '../records/common'
import { AtPoint } from './at-point'
import { FactId } from './fact'
import { PhotoIntakeBody } from './photo-intake-body'
import { TallyScan } from './transcription-bodies'

/** Bodies of the facts of a repair's stream that are about photos, by kind. */
export const PHOTO_BODIES = {
  'photo-attached': z.lazy(() =>
    z.strictObject({
      ...AtPoint,
      photo: PhotoIntakeBody,
      caption: Text,
      demand: z.string().max(40).optional(),
      mark: Mark.optional(),
      record: FactId.optional(),
      scan: TallyScan.optional(),
    }),
  ),
  'photo-judged': z.lazy(() =>
    z.strictObject({ photo: FactId, decision: z.enum(['accepted', 'not accepted']), reason: Reason }),
  ),
  'photo-annotated': z.lazy(() =>
    z.strictObject({
      photo: FactId,
      shapes: z
        .array(
          z.strictObject({
            kind: z.enum(['arrow', 'ring', 'text']),
            x: z.number().min(0).max(1),
            y: z.number().min(0).max(1),
            text: z.string().max(80).optional(),
          }),
        )
        .max(30),
    }),
  ),
  'photo-disagrees': z.lazy(() =>
    z.strictObject({
      photo: FactId,
      record: FactId,
      mark: Mark.optional(),
      shows: Text,
      reason: Reason,
    }),
  ),
  'likeness-judged': z.lazy(() =>
    z.strictObject({
      photo: FactId,
      other: FactId,
      decision: z.enum(['different pictures', 'same picture, rightly used', 'same picture, wrongly used']),
      reason: Reason,
    }),
  ),
} as const
