import type { Picture, Place, Shape } from '@/lib/domain/pictures/picture'
import { type Paint, paintOf, shadeOf } from '@/lib/domain/pictures/picture-paint'
import { type FontMetrics, legible } from '../layout/font-metrics'
import type { ContentStream, PathPaint } from './content-stream'

export type PictureFrame = {
  x: number
  y: number
  scale: number
  metrics: FontMetrics
  writeText: (x: number, y: number, text: string, face: 'regular' | 'bold', sizePt: number, colour: string) => void
}

/** Draw a picture's shapes as vectors, its top left at the frame's x and y. */
export function drawPicture(picture: Picture, frame: PictureFrame, stream: ContentStream): void {
  for (const shape of picture.shapes) drawShape(shape, frame, stream)
}

function drawShape(shape: Shape, frame: PictureFrame, stream: ContentStream): void {
  const { scale } = frame
  const at = ([x, y]: Place): Place => [frame.x + x * scale, frame.y + y * scale]
  switch (shape.kind) {
    case 'polygon':
      stream.path(shape.points.map(at), true, inkOf(paintOf(shape.style, shape.state), scale))
      break
    case 'polyline':
      stream.path(shape.points.map(at), false, {
        ...inkOf(paintOf(shape.style, shape.state), scale),
        fill: null,
      })
      break
    case 'segments':
      stream.segments(
        shape.segments.map(([from, to]) => [at(from), at(to)] as const),
        { ...inkOf(paintOf(shape.style), scale), fill: null },
      )
      break
    case 'circle':
      stream.circle(...at([shape.x, shape.y]), shape.radiusPx * scale, inkOf(paintOf(shape.style), scale))
      break
    case 'cells':
      drawCells(shape, frame, stream)
      break
    case 'text':
      drawText(shape, frame)
      break
  }
}

function drawText(shape: Extract<Shape, { kind: 'text' }>, frame: PictureFrame): void {
  const paint = paintOf(shape.style)
  const face = paint.isBold ? 'bold' : 'regular'
  const sizePt = paint.sizePx * frame.scale
  const text = legible(shape.text, face, frame.metrics)
  const widthPt = frame.metrics.widthPt(text, face, sizePt)
  const shift = shape.anchor === 'middle' ? widthPt / 2 : shape.anchor === 'end' ? widthPt : 0
  frame.writeText(
    frame.x + shape.x * frame.scale - shift,
    frame.y + shape.y * frame.scale,
    text,
    face,
    sizePt,
    paint.fill ?? '#000000',
  )
}

const SHADES = 32

/** Neighbours of one shade in a row are drawn as one box. */
function drawCells(shape: Extract<Shape, { kind: 'cells' }>, frame: PictureFrame, stream: ContentStream): void {
  const [width, height] = [shape.cellWidthPx * frame.scale, shape.cellHeightPx * frame.scale]
  const stepOf = (index: number): number | null => {
    const share = shape.shares[index] ?? null
    return share === null ? null : Math.round(share * SHADES)
  }
  for (let index = 0; index < shape.shares.length; ) {
    const step = stepOf(index)
    const row = Math.floor(index / shape.columns)
    let end = index + 1
    while (end < (row + 1) * shape.columns && stepOf(end) === step) end += 1
    if (step !== null)
      stream.box(
        frame.x + shape.x * frame.scale + (index % shape.columns) * width,
        frame.y + shape.y * frame.scale + row * height,
        width * (end - index) + 0.15,
        height + 0.15,
        { fill: shadeOf(step / SHADES), stroke: null, widthPt: 0 },
      )
    index = end
  }
}

function inkOf(paint: Paint, scale: number): PathPaint {
  return {
    fill: paint.fill,
    stroke: paint.strokePx > 0 ? paint.stroke : null,
    widthPt: paint.strokePx * scale,
    dashPt: paint.dashPx.map((one) => one * scale),
  }
}
