import type { Block, Span, Tone } from '../blocks'
import { leadPt, type Pen } from './pen'
import { photoRowPt, placePhotos } from './place-photos'
import { placeSeal } from './place-seal'
import { placeTable, tableStartPt } from './place-table'
import { BODY_WIDTH_PT, SHEET } from './sheet'
import { toneOf } from './tone-of'

const HEADING_PT = 10.5
const PARAGRAPH_PT = 8.6
const HEADINGS = [undefined, 'H1', 'H2', 'H3', 'H4'] as const

/** Place one block at the pen. `next` is the block that follows: a heading never stands alone at the foot of a sheet. */
export function placeBlock(block: Block, next: Block | undefined, pen: Pen): void {
  switch (block.kind) {
    case 'cover':
      placeCover(block, pen)
      break
    case 'section':
      placeSection(block, next, pen)
      break
    case 'title':
      placeTitle(block, next, pen)
      break
    case 'heading':
      placeHeading(block, next, pen)
      break
    case 'paragraph':
      placeParagraph(block, pen)
      break
    case 'table':
      placeTable(block, pen)
      break
    case 'picture':
      placePicture(block, pen)
      break
    case 'photos':
      placePhotos(block, pen)
      break
    case 'seal':
      placeSeal(block, pen)
      break
    case 'break':
      if (pen.leftPt < block.unlessLeft * (SHEET.body.bottom - SHEET.body.top) && !pen.isAtTop) pen.nextSheet()
      break
  }
}

function placeLines(spans: readonly Span[], sizePt: number, pen: Pen, widthPt = BODY_WIDTH_PT): void {
  for (const line of pen.lines(spans, widthPt, sizePt)) {
    pen.line(line, SHEET.body.left, pen.y, sizePt)
    pen.y += leadPt(sizePt)
  }
}

function startPt(block: Block | undefined, pen: Pen): number {
  if (!block) return 0
  if (block.kind === 'break') return block.unlessLeft * (SHEET.body.bottom - SHEET.body.top)
  if (block.kind === 'title') return 70
  if (block.kind === 'heading') return 40
  if (block.kind === 'table') return tableStartPt(block, pen)
  if (block.kind === 'picture') return pictureSize(block).heightPt + 26
  if (block.kind === 'photos') return photoRowPt(block, pen)
  return 2 * leadPt(PARAGRAPH_PT)
}

function placeSection(block: Extract<Block, { kind: 'section' }>, next: Block | undefined, pen: Pen): void {
  pen.ensure(60 + startPt(next, pen))
  if (!pen.isAtTop) pen.y += 14
  const spans: Span[] = [
    { text: `${block.no}  `, face: 'bold', tone: 'soft' },
    { text: block.text, face: 'bold' },
  ]
  pen.as('H1', () => placeLines(spans, 15, pen))
  pen.headingDepth = 1
  pen.add({
    kind: 'line',
    x1: SHEET.body.left,
    y1: pen.y + 1,
    x2: SHEET.body.right,
    y2: pen.y + 1,
    widthPt: 1.4,
    tone: 'ink',
  })
  pen.y += 8
}

function placeHeading(
  { text, isMinor = false }: Extract<Block, { kind: 'heading' }>,
  next: Block | undefined,
  pen: Pen,
): void {
  const sizePt = isMinor ? 8 : HEADING_PT
  pen.ensure(leadPt(sizePt) + 10 + startPt(next, pen))
  if (!pen.isAtTop && !isMinor) pen.y += 6
  pen.as(HEADINGS[Math.min(pen.headingDepth + 1, 4)] ?? 'H4', () =>
    placeLines([{ text, face: 'bold', tone: isMinor ? 'soft' : 'ink' }], sizePt, pen),
  )
  pen.y += isMinor ? 1.5 : 3
}

function placeParagraph(block: Extract<Block, { kind: 'paragraph' }>, pen: Pen): void {
  const sizePt = block.sizePt ?? PARAGRAPH_PT
  const room = sizePt < 7.5 ? BODY_WIDTH_PT : Math.min(BODY_WIDTH_PT, sizePt * 62)
  pen.as('P', () => {
    for (const line of pen.lines(block.spans, room, sizePt)) {
      pen.ensure(leadPt(sizePt))
      pen.line(line, SHEET.body.left, pen.y, sizePt)
      pen.y += leadPt(sizePt)
    }
  })
  pen.y += 4.5
}

function placeTitle(block: Extract<Block, { kind: 'title' }>, next: Block | undefined, pen: Pen): void {
  pen.ensure(70 + startPt(next, pen))
  if (!pen.isAtTop) pen.y += 12
  const signRoom = block.sign ? 130 : 0
  pen.as('P', () => placeLines([{ text: block.eyebrow, face: 'bold', tone: 'soft' }], 8.5, pen))
  const top = pen.y
  pen.as('H2', () => placeLines([{ text: block.text, face: 'bold' }], 17, pen, BODY_WIDTH_PT - signRoom))
  pen.headingDepth = 2
  if (block.sign) {
    const [word] = pen.lines([{ text: block.sign.text, face: 'bold' }], signRoom, 12)
    const { glyph } = block.sign
    if (word) {
      const x = SHEET.body.right - word.widthPt
      pen.as('P', () => pen.line(word, x, top + 4, 12, toneOf(glyph)))
      pen.add({ kind: 'sign', x: x - 19, y: top + 3.2, sizePt: 15, glyph })
    }
  }
  pen.y += 2
  pen.add({ kind: 'line', x1: SHEET.body.left, y1: pen.y, x2: SHEET.body.right, y2: pen.y, widthPt: 1.4, tone: 'ink' })
  pen.y += 6
  const { state } = block
  if (state) {
    pen.as('P', () => placeLines([{ text: state, tone: 'soft' }], 8.2, pen))
    pen.y += 4
  }
}

function pictureSize(block: Extract<Block, { kind: 'picture' }>): { scale: number; heightPt: number } {
  const scale = Math.min(
    (BODY_WIDTH_PT - 12) / block.picture.widthPx,
    (block.maxHeightPt ?? 400) / block.picture.heightPx,
  )
  return { scale, heightPt: block.picture.heightPx * scale + 12 }
}

function placePicture(block: Extract<Block, { kind: 'picture' }>, pen: Pen): void {
  const { scale, heightPt } = pictureSize(block)
  pen.ensure(heightPt + 20)
  if (block.title) {
    pen.as('P', () => placeLines([{ text: block.title, face: 'bold' }], 8.6, pen))
    pen.y += 2
  }
  pen.add({ kind: 'box', x: SHEET.body.left, y: pen.y, widthPt: BODY_WIDTH_PT, heightPt, fill: 'sheet', edge: 'rule' })
  const x = SHEET.body.left + (BODY_WIDTH_PT - block.picture.widthPx * scale) / 2
  pen.as('Figure', () => pen.add({ kind: 'picture', x, y: pen.y + 6, scale, picture: block.picture }), {
    alt: block.picture.description,
    boxPt: [SHEET.body.left, pen.y, SHEET.body.right, pen.y + heightPt],
  })
  pen.y += heightPt + 8
}

function placeCover(block: Extract<Block, { kind: 'cover' }>, pen: Pen): void {
  const put = (
    text: string,
    sizePt: number,
    face: 'regular' | 'bold',
    tone: Tone,
    gapPt: number,
    { indent = 0, type = 'P' }: { indent?: number; type?: 'P' | 'H1' } = {},
  ): void => {
    pen.as(type, () => {
      for (const line of pen.lines([{ text, face, tone }], BODY_WIDTH_PT - indent, sizePt)) {
        pen.line(line, SHEET.body.left + indent, pen.y, sizePt)
        pen.y += leadPt(sizePt)
      }
    })
    pen.y += gapPt
  }
  put(block.organisation, 9.5, 'bold', 'soft', 2)
  put(block.title, 25, 'bold', 'ink', 0, { type: 'H1' })
  pen.headingDepth = 1
  put(block.place, 12, 'regular', 'ink', 10)
  pen.add({ kind: 'sign', x: SHEET.body.left, y: pen.y + 0.6, sizePt: 17, glyph: block.sign.glyph })
  put(block.sign.text, 14, 'bold', toneOf(block.sign.glyph), 3, { indent: 23 })
  put(block.lead, 9.5, 'regular', 'soft', 6)
}
