import { type Block, paragraph } from '../blocks'
import { type DossierContext, isScan } from '../dossier-context'
import { photoCells } from './photo-cells'

/** Section 19: every photo in full, then the scans of tally sheets, which are pictures of paper and no photos of the work. */
export function photoBlocks(context: DossierContext): Block[] {
  const photos = context.photos.filter((one) => !isScan(one))
  const scans = context.photos.filter(isScan)
  return [
    photos.length > 0
      ? { kind: 'photos', perRow: 2, pictureHeightPt: 216, photos: photoCells(photos, context, 'full') }
      : paragraph('No photos.', 'not-proven'),
    ...(scans.length > 0
      ? [
          { kind: 'heading', text: `Scans of paper tallies: ${scans.length}` } as const,
          paragraph(
            'The paper remains the original; its keeper and place stand at each record copied from it.',
            'soft',
          ),
          { kind: 'photos', perRow: 1, pictureHeightPt: 520, photos: photoCells(scans, context, 'full') } as const,
        ]
      : []),
  ]
}
