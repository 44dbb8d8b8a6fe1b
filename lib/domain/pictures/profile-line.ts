/** A piecewise straight line over x in mm, points by increasing x. */
export type ProfileLine = readonly (readonly [xMm: number, yMm: number])[]

/** Height of the line at x; before the first and after the last point the end's height. @throws RangeError when it has no point */
export function heightAt(line: ProfileLine, xMm: number): number {
  const [first] = line
  if (!first) throw new RangeError('a line without points')
  let before = first
  for (const point of line) {
    if (point[0] >= xMm) {
      const span = point[0] - before[0]
      return span === 0 ? point[1] : before[1] + ((point[1] - before[1]) * (xMm - before[0])) / span
    }
    before = point
  }
  return before[1]
}

/** The x of every bend of several lines between two ends, both ends included, increasing. */
export function bendsBetween(fromMm: number, toMm: number, ...lines: ProfileLine[]): number[] {
  const inside = lines.flatMap((line) => line.map(([x]) => x)).filter((x) => x > fromMm && x < toMm)
  return [...new Set([fromMm, ...inside, toMm])].sort((a, b) => a - b)
}
