import type { Block } from '../blocks'
import { leadPt, type Pen } from './pen'
import { BODY_WIDTH_PT, SHEET } from './sheet'
import type { Line } from './text-lines'

type PhotosBlock = Extract<Block, { kind: 'photos' }>
type Captioned = { photo: PhotosBlock['photos'][number]; caption: Line[] }
const GAP_PT = 10
const CAPTION_PT = 7
const PAD_PT = 5

/** Height of a block's first row of photos with their captions. */
export function photoRowPt(block: PhotosBlock, pen: Pen): number {
  return rowPt(
    block,
    block.photos.slice(0, block.perRow).map((photo) => ({ photo, caption: captionLines(photo, block, pen) })),
  )
}

/** Place photos in rows, each in its own frame with its caption below; a row never breaks. Proportions are kept. */
export function placePhotos(block: PhotosBlock, pen: Pen): void {
  for (let at = 0; at < block.photos.length; at += block.perRow) {
    const row = block.photos
      .slice(at, at + block.perRow)
      .map((photo) => ({ photo, caption: captionLines(photo, block, pen) }))
    const heightPt = rowPt(block, row)
    pen.ensure(heightPt)
    for (const [index, one] of row.entries())
      placePhoto(one, SHEET.body.left + index * (widthPt(block) + GAP_PT), heightPt, block, pen)
    pen.y += heightPt + GAP_PT
  }
}

function widthPt(block: PhotosBlock): number {
  return (BODY_WIDTH_PT - (block.perRow - 1) * GAP_PT) / block.perRow
}

function captionLines(photo: PhotosBlock['photos'][number], block: PhotosBlock, pen: Pen): Line[] {
  return photo.lines.flatMap((spans) => pen.lines(spans, widthPt(block) - 2 * PAD_PT, CAPTION_PT))
}

function rowPt(block: PhotosBlock, row: readonly Captioned[]): number {
  return block.pictureHeightPt + Math.max(...row.map((one) => one.caption.length)) * leadPt(CAPTION_PT) + 2 * PAD_PT
}

function placePhoto({ photo, caption }: Captioned, x: number, heightPt: number, block: PhotosBlock, pen: Pen): void {
  const width = widthPt(block)
  const { widthPx, heightPx, sha256 } = photo.rendition
  const scale = Math.min((width - 2) / widthPx, (block.pictureHeightPt - 2) / heightPx)
  pen.add(
    { kind: 'box', x, y: pen.y, widthPt: width, heightPt, fill: null, edge: 'rule' },
    {
      kind: 'box',
      x: x + 0.5,
      y: pen.y + 0.5,
      widthPt: width - 1,
      heightPt: block.pictureHeightPt - 1,
      fill: 'ground',
      edge: null,
    },
  )
  if (photo.isReadable) {
    const placed = {
      kind: 'photo',
      x: x + (width - widthPx * scale) / 2,
      y: pen.y + (block.pictureHeightPt - heightPx * scale) / 2,
      widthPt: widthPx * scale,
      heightPt: heightPx * scale,
      sha256,
    } as const
    pen.as('Figure', () => pen.add(placed), {
      alt: `Photo ${(photo.lines[0] ?? []).map((span) => span.text).join('')}`,
      boxPt: [placed.x, placed.y, placed.x + placed.widthPt, placed.y + placed.heightPt],
    })
  } else pen.as('P', () => placeAbsence(x, width, block, pen))
  pen.as('P', () => {
    for (const [at, line] of caption.entries())
      pen.line(line, x + PAD_PT, pen.y + block.pictureHeightPt + PAD_PT * 0.6 + at * leadPt(CAPTION_PT), CAPTION_PT)
  })
}

function placeAbsence(x: number, width: number, block: PhotosBlock, pen: Pen): void {
  for (const [at, line] of pen
    .lines(
      [{ text: 'The stored picture is missing or does not match its digest.', face: 'bold', tone: 'fail' }],
      width - 24,
      9,
    )
    .entries())
    pen.line(line, x + 12, pen.y + block.pictureHeightPt / 2 - 10 + at * 13, 9)
}
