import * as z from 'zod'
import { Sha256 } from './fact'

/** Measures and renditions of a photo as taken in (lib/photo). Claims are what the file says, nothing more. */
export const PhotoIntakeBody = z.lazy(() =>
  z.strictObject({
    sha256: Sha256,
    sizeBytes: z.int().positive(),
    mediaType: z.enum(['image/jpeg', 'image/png', 'image/webp', 'image/heic']),
    widthPx: z.int().positive(),
    heightPx: z.int().positive(),
    rendition: z.strictObject({
      sha256: Sha256,
      sizeBytes: z.int().positive(),
      widthPx: z.int().positive(),
      heightPx: z.int().positive(),
    }),
    thumb: z.strictObject({
      sha256: Sha256,
      sizeBytes: z.int().positive(),
      widthPx: z.int().positive(),
      heightPx: z.int().positive(),
    }),
    claims: z.strictObject({
      takenAt: z.string().max(40).nullable(),
      offset: z.string().max(10).nullable(),
      latitude: z.number().nullable(),
      longitude: z.number().nullable(),
      camera: z.string().max(120).nullable(),
      hasOriginalMetadata: z.boolean(),
    }),
    measures: z.strictObject({
      sharpness: z.number(),
      meanLightness: z.number(),
      shareDark: z.number(),
      shareBright: z.number(),
      dHash: z.string().regex(/^[0-9a-f]{16}$/),
      pHash: z.string().regex(/^[0-9a-f]{16}$/),
    }),
  }),
)

export type PhotoIntakeBody = z.infer<typeof PhotoIntakeBody>
