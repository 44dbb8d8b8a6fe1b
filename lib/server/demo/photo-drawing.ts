import { createHash } from 'node:crypto'
import type { z } from 'zod'
import type { PhotoIntakeBody } from '@/lib/domain/facts/photo-intake-body'
import type { Moment } from '@/lib/domain/time'

/** What a drawn photo shows. Texts are those of the record it backs. */
export type Scene =
  | {
      kind: 'pipe'
      shows:
        | 'hole'
        | 'wide'
        | 'prepared'
        | 'length'
        | 'wet'
        | 'dry'
        | 'marks'
        | 'band'
        | 'ply'
        | 'joint'
        | 'film'
        | 'side'
        | 'label'
        | 'tested'
        | 'weep'
        | 'primer'
      clock: string
      note: string
    }
  | { kind: 'dial'; title: string; value: number; from: number; to: number; unit: string; note: string }
  | { kind: 'digital'; title: string; lines: string[]; note: string }
  | { kind: 'package'; lines: string[]; colour: string }
  | { kind: 'scale'; readings: string[]; labels: string[] }
  | { kind: 'board'; title: string; lines: string[] }
  | { kind: 'wipe'; clock: string; note: string }
  | { kind: 'logger'; series: number[]; note: string }

/** One photo to be drawn: its key is its place in the demo, unique; the same key gives the same bytes. */
export type PhotoDrawing = { key: string; repair: string; point: string; takenAt: Moment; scene: Scene }

/** The input form of a photo's intake, as a fact's body takes it. */
export type IntakeText = z.input<typeof PhotoIntakeBody>

/** Gives the intake of a drawing: of the drawn JPEG when the demo is seeded. */
export type PhotoBook = (drawing: PhotoDrawing) => IntakeText

/**
 * Intakes told from the drawing's description alone, for folding the demo without drawing or storing anything: the digests are those of the
 * description, not of a picture.
 */
export const describedPhotos: PhotoBook = (drawing) => {
  const digest = (part: string) =>
    createHash('sha256')
      .update(JSON.stringify([part, drawing]))
      .digest('hex')
  const face = { sizeBytes: 1, widthPx: 1, heightPx: 1 }
  return {
    sha256: digest('original'),
    sizeBytes: 1,
    mediaType: 'image/jpeg',
    widthPx: 1,
    heightPx: 1,
    rendition: { sha256: digest('rendition'), ...face },
    thumb: { sha256: digest('thumb'), ...face },
    claims: {
      takenAt: drawing.takenAt,
      offset: drawing.takenAt.slice(19),
      latitude: null,
      longitude: null,
      camera: null,
      hasOriginalMetadata: true,
    },
    measures: {
      sharpness: 1,
      meanLightness: 0.5,
      shareDark: 0,
      shareBright: 0,
      dHash: digest('dHash').slice(0, 16),
      pHash: digest('pHash').slice(0, 16),
    },
  }
}
