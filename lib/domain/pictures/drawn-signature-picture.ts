import { DRAWING_HEIGHT, DRAWING_WIDTH, type DrawnSignature } from '../signing/drawn-signature'
import type { Picture, Shape } from './picture'

/** A drawn signature as a picture: its strokes over a line, in a frame. @param of whose it is, in words */
export function drawnSignaturePicture(drawing: DrawnSignature, of: string): Picture {
  const line = DRAWING_HEIGHT * 0.8
  return {
    widthPx: DRAWING_WIDTH,
    heightPx: DRAWING_HEIGHT,
    title: `Signature drawn by ${of}`,
    description: `A signature drawn by hand in ${drawing.strokes.length} strokes by ${of}.`,
    shapes: [
      {
        kind: 'segments',
        segments: [
          [
            [20, line],
            [DRAWING_WIDTH - 20, line],
          ],
        ],
        style: 'dimension',
      },
      ...drawing.strokes.map(
        // a dot is a stroke of one place
        (stroke): Shape =>
          stroke.length === 1 && stroke[0]
            ? { kind: 'circle', x: stroke[0][0], y: stroke[0][1], radiusPx: 2, style: 'dot' }
            : { kind: 'polyline', points: stroke, style: 'series' },
      ),
    ],
  }
}
