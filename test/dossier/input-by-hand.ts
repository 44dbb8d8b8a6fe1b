import type { PhotoState, RepairState } from '@/lib/domain/fold/repair-state'
import type { DossierInput } from '@/lib/dossier/dossier-input'
import { photoBody } from '@/test/domain/fold/photo-body'
import { fact, facts, HEX, no, receipts } from './facts-by-hand'
import type { MadeJpeg } from './jpeg-for-tests'
import { repairByHand } from './state-by-hand'

/** The dossier's input for the repair by hand. */
export function inputByHand(change: Partial<RepairState> = {}): DossierInput {
  return {
    state: { ...repairByHand(), ...change },
    facts: facts.filter((one) => one.kind !== 'photo-attached'),
    receipts,
    sha256Of: new Map(),
    head: { kind: 'for review' },
    organisation: 'Plumbline-and-Thrice Inspection',
    isDemo: false,
  }
}

/** The same with photos attached at the first attempt of a point. */
export function withPhotos(
  input: DossierInput,
  point: string,
  pictures: readonly MadeJpeg[],
  caption = 'Gauge at C-6',
): DossierInput {
  const photos = pictures.map(
    (one, index): PhotoState => ({
      judged: null,
      flags: [],
      fact: fact('photo-attached', `05-21 09:0${index % 10}`, 'qi', {
        point: no(point),
        attempt: 1,
        caption,
        photo: photoBody('d', {
          sha256: HEX('a1b2'),
          rendition: {
            sha256: one.sha256,
            sizeBytes: one.bytes.length,
            widthPx: one.widthPx,
            heightPx: one.heightPx,
          },
          claims: { takenAt: '2026-05-21T09:01:00', offset: '+01:00', camera: 'Test camera' },
        }),
      }),
    }),
  )
  const points = input.state.points.map((one) =>
    one.no === point
      ? { ...one, attempts: one.attempts.map((attempt) => (attempt.attempt === 1 ? { ...attempt, photos } : attempt)) }
      : one,
  )
  return { ...input, facts: [...input.facts, ...photos.map((one) => one.fact)], state: { ...input.state, points } }
}
