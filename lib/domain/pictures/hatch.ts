import type { Place } from './picture'

/**
 * Hatching at 45 degrees clipped to a polygon (even-odd), as segments in the polygon's pixels, `gapPx` apart.
 * Lines that only touch a corner give nothing.
 */
export function hatchOf(polygon: readonly Place[], gapPx: number): [Place, Place][] {
  const sums = polygon.map(([x, y]) => x + y)
  const first = Math.ceil(Math.min(...sums) / gapPx)
  const last = Math.floor(Math.max(...sums) / gapPx)
  const segments: [Place, Place][] = []
  for (let step = first; step <= last; step += 1) {
    const sum = step * gapPx + 0.01
    const crossings = polygon
      .flatMap((from, index) => crossingOf(from, polygon[(index + 1) % polygon.length] ?? from, sum))
      .sort((a, b) => a - b)
    for (let index = 0; index + 1 < crossings.length; index += 2) {
      const [from, to] = [crossings[index] ?? 0, crossings[index + 1] ?? 0]
      if (to - from > 0.5)
        segments.push([
          [from, sum - from],
          [to, sum - to],
        ])
    }
  }
  return segments
}

/** x where the edge crosses the line x + y = sum; none when both ends lie on one side. */
function crossingOf([x1, y1]: Place, [x2, y2]: Place, sum: number): number[] {
  const [before, after] = [x1 + y1 - sum, x2 + y2 - sum]
  if (before > 0 === after > 0) return []
  return [x1 + ((x2 - x1) * before) / (before - after)]
}
