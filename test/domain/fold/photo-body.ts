import type { z } from 'zod'
import { PhotoIntakeBody } from '@/lib/domain/facts/photo-intake-body'

type Said = z.input<typeof PhotoIntakeBody>

type More = Partial<Omit<Said, 'claims' | 'measures'>> & {
  claims?: Partial<Said['claims']>
  measures?: Partial<Said['measures']>
}

/** Measures of a picture that nothing stands out in. */
const MEASURES = {
  sharpness: 1,
  meanLightness: 0.5,
  shareDark: 0,
  shareBright: 0,
  dHash: '0'.repeat(16),
  pHash: '0'.repeat(16),
}

/** What a fact keeps of a photo: one digest of one digit repeated for original and renditions, and a file that says nothing of itself, unless more is said. */
export function photoBody(hash: string, more: More = {}) {
  const size = { sha256: hash.repeat(64), sizeBytes: 1000, widthPx: 10, heightPx: 10 }
  const { claims, measures, ...parts } = more
  return PhotoIntakeBody.parse({
    ...size,
    mediaType: 'image/jpeg',
    rendition: size,
    thumb: size,
    ...parts,
    measures: { ...MEASURES, ...measures },
    claims: {
      takenAt: null,
      offset: null,
      latitude: null,
      longitude: null,
      camera: null,
      hasOriginalMetadata: true,
      ...claims,
    },
  })
}
