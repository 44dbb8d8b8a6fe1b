import type { Grid } from '../records/common'
import { clockDegrees, edgesOf, frameCorners, mapFrame, mapPlaces } from './map-frame'
import { mapAxes } from './map-lines'
import type { Picture, Place, Shape } from './picture'

const [WIDTH, HEIGHT] = [620, 230]
const ARM = 14

/**
 * The marks of a grid on the unrolled pipe before anything is read there, each with its place in the order of reading; the leak as a cross where its clock position is known.
 * @param order the marks in the order in which they are read
 */
export function marksPicture(grid: Grid, order: readonly string[], leakClock: string | null): Picture {
  const { stations, ring } = mapPlaces(grid)
  const frame = mapFrame({ left: 64, right: WIDTH - 34, top: 24, bottom: HEIGHT - 46 }, stations)
  const numbers = new Map(order.map((mark, at) => [mark, at + 1]))
  const leak = (deg: number): Shape => ({ kind: 'segments', style: 'frame', segments: cross(frame.x(0), frame.y(deg)) })
  const number = (x: number, y: number, mark: string): Shape[] => [
    { kind: 'circle', x, y, radiusPx: 11, style: 'mark-plain', mark },
    { kind: 'text', x, y: y + 4.3, text: String(numbers.get(mark) ?? ''), style: 'value', anchor: 'middle', mark },
  ]
  return {
    widthPx: WIDTH,
    heightPx: HEIGHT,
    title: 'Marks on the unrolled pipe',
    description: `${order.length} marks in the order of reading: ${order.join(', ')}. Stations across, in mm from the leak; clock positions down.`,
    shapes: [
      { kind: 'polygon', style: 'ground', points: frameCorners(frame) },
      ...mapAxes(stations, ring, frame),
      ...(leakClock === null ? [] : edgesOf(clockDegrees(leakClock)).map(leak)),
      ...stations.flatMap(({ name, mm }) =>
        ring.flatMap(({ clock, deg }) =>
          edgesOf(deg).flatMap((each) => number(frame.x(mm), frame.y(each), `${name}-${clock}`)),
        ),
      ),
    ],
  }
}

function cross(x: number, y: number): [Place, Place][] {
  return [
    [
      [x - ARM, y - ARM],
      [x + ARM, y + ARM],
    ],
    [
      [x - ARM, y + ARM],
      [x + ARM, y - ARM],
    ],
  ]
}
