import type { VerdictKind } from '../judge/verdict'
import { type Reading, showReading } from '../reading'
import type { Place, Shape, StyleName } from './picture'

/**
 * One mark with its reading at x, y: a ring that passes or is not judged, a diamond that fails, six sides where it is not proven, a square round a value that
 * is no number. A mark without a reading shows a point.
 */
export function markShapes(
  x: number,
  y: number,
  mark: string,
  reading: Reading | undefined,
  verdict: VerdictKind | null,
): Shape[] {
  const text = reading ? showReading(reading) : '·'
  const half = Math.max(13, 4 + text.length * 3.7)
  const box = (points: readonly Place[], style: StyleName): Shape => ({ kind: 'polygon', points, style, mark })
  const isNumber = reading?.kind === 'number'
  const style: StyleName =
    verdict === 'pass'
      ? 'mark-pass'
      : verdict === 'fail'
        ? 'mark-fail'
        : verdict === 'not proven'
          ? 'mark-not-proven'
          : 'mark-plain'
  const outline: Shape =
    !isNumber && reading
      ? box(
          [
            [x - half, y - 10],
            [x + half, y - 10],
            [x + half, y + 10],
            [x - half, y + 10],
          ],
          style,
        )
      : verdict === 'fail'
        ? box(
            [
              [x, y - half - 4],
              [x + half + 4, y],
              [x, y + half + 4],
              [x - half - 4, y],
            ],
            style,
          )
        : verdict === 'not proven'
          ? box(
              [
                [x - half, y],
                [x - half / 2, y - 12],
                [x + half / 2, y - 12],
                [x + half, y],
                [x + half / 2, y + 12],
                [x - half / 2, y + 12],
              ],
              style,
            )
          : { kind: 'circle', x, y, radiusPx: half, style, mark }
  return [
    outline,
    {
      kind: 'text',
      x,
      y: y + 4.3,
      text,
      anchor: 'middle',
      mark,
      style: verdict === 'fail' ? 'value-fail' : verdict === 'not proven' ? 'value-not-proven' : 'value',
    },
  ]
}
