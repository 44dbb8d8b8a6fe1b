import { showSigned } from '@/lib/domain/decimal'
import { sectionPicture } from '@/lib/domain/pictures/section-picture'
import { type Block, paragraph, singleLine } from '../blocks'
import { type DossierContext, isScan, type NumberedPhoto } from '../dossier-context'
import { recordMap } from './attempt-maps'
import { photoCells } from './photo-cells'

/** Section 4: place, cut through the leak, unrolled pipe before and after, photos before and after. */
export function locationBlocks(context: DossierContext): Block[] {
  const { state } = context
  const { body } = state.opened
  const picture = sectionPicture(state)
  const maps = state.points.flatMap((point) => {
    const attempt = point.attempts.findLast((one) =>
      one.records.some(
        ({ record }) => record.type === 'defect' || record.type === 'thickness' || record.type === 'hardness',
      ),
    )
    return attempt
      ? attempt.records
          .filter((one) => one.overruledBy === null)
          .flatMap((one) => recordMap(one, attempt, attempt.point === '01' ? 'As found. ' : 'As built. ', state))
      : []
  })
  const photos = context.photos.filter((one) => !isScan(one))
  const [before, after] = [photos[0], lastOf(photos)]
  const shown = [before, after === before ? undefined : after].filter((one) => one !== undefined)
  return [
    singleLine([
      ['Line', `${body.line}, ${body.lineTitle}`],
      ['Datum and station', `${body.datum}, ${showSigned(body.stationFromDatum)} mm`],
      ['Clock position', `${body.clock} o’clock, ${body.clockView}`],
      ['Flow', body.flow ?? 'not stated'],
      ['Geometry', body.geometry],
      ['Kind of repair', `${body.arrest}; ${body.wrap}`],
    ]),
    { kind: 'picture', title: picture.title, picture, maxHeightPt: 250 },
    paragraph(
      `${picture.description}. A layer is hatched while its points are open, solid once released, pale with a dashed edge where a release lapsed, was withdrawn or is in question.`,
      'soft',
    ),
    ...maps,
    ...(shown.length > 0
      ? [
          { kind: 'heading', text: 'First and last photo of the work' } as const,
          { kind: 'photos', perRow: 2, pictureHeightPt: 170, photos: photoCells(shown, context, 'short') } as const,
        ]
      : [paragraph('No photos.', 'not-proven')]),
  ]
}

function lastOf(photos: readonly NumberedPhoto[]): NumberedPhoto | undefined {
  return [...photos].sort((a, b) => Date.parse(a.photo.fact.observedAt) - Date.parse(b.photo.fact.observedAt)).at(-1)
}
