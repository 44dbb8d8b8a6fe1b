import type { Place } from '@/lib/domain/pictures/picture'
import type { Face, FontMetrics } from '../layout/font-metrics'
import type { Placed } from '../layout/placed'
import type { StructureNode } from '../layout/structure'
import { ContentStream } from './content-stream'
import { drawPicture } from './draw-picture'
import { drawSign } from './draw-sign'
import { INK } from './ink'

/** What drawing a sheet needs of the document: text to glyph codes by face, and a name for each photo. */
export type SheetInk = {
  encode: (text: string, face: Face) => string
  photoName: (sha256: string) => string
  /** Number on this page of what is drawn next for an element of the structure. */
  markOf: (element: StructureNode) => number
  metrics: FontMetrics
}

export const FONT_NAMES: Record<Face, string> = { regular: 'F1', bold: 'F2', mono: 'F3' }

/** Draw one sheet's things in order, each marked as part of its element of the structure or as decoration; returns the page's operators. */
export function drawSheet(items: readonly Placed[], heightPt: number, ink: SheetInk): string {
  const stream = new ContentStream(heightPt)
  for (let at = 0; at < items.length; ) {
    const element = items[at]?.tag
    stream.open(element ? { type: element.type, number: ink.markOf(element) } : null)
    for (let placed = items[at]; placed && placed.tag === element; placed = items[at]) {
      drawPlaced(placed, stream, ink)
      at += 1
    }
    stream.close()
  }
  return stream.toString()
}

function drawPlaced(placed: Placed, stream: ContentStream, ink: SheetInk): void {
  const writeText = (x: number, y: number, text: string, face: Face, sizePt: number, colour: string): void =>
    stream.text(x, y, ink.encode(text, face), FONT_NAMES[face], sizePt, colour)
  switch (placed.kind) {
    case 'text':
      writeText(placed.x, placed.y, placed.text, placed.face, placed.sizePt, INK[placed.tone])
      break
    case 'line':
      stream.line(placed.x1, placed.y1, placed.x2, placed.y2, placed.widthPt, INK[placed.tone])
      break
    case 'box':
      stream.box(placed.x, placed.y, placed.widthPt, placed.heightPt, {
        fill: placed.fill && INK[placed.fill],
        stroke: placed.edge && INK[placed.edge],
        widthPt: placed.edge === 'ink' ? 1.1 : 0.6,
      })
      break
    case 'sign':
      drawSign(placed.glyph, placed.x, placed.y, placed.sizePt, stream)
      break
    case 'picture':
      drawPicture(
        placed.picture,
        { x: placed.x, y: placed.y, scale: placed.scale, metrics: ink.metrics, writeText },
        stream,
      )
      break
    case 'squares':
      stream.squares(
        placed.x,
        placed.y,
        placed.sidePt,
        placed.rows.flatMap((row, y) => row.flatMap((isDark, x): Place[] => (isDark ? [[x, y]] : []))),
        '#000000',
      )
      break
    case 'photo':
      stream.image(ink.photoName(placed.sha256), placed.x, placed.y, placed.widthPt, placed.heightPt)
      break
  }
}
