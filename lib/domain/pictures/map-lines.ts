import type { MapFrame } from './map-frame'
import type { Place, Shape } from './picture'
import type { WeakestZone } from './weakest-zone'

/** The edges of the zone's fields that border on no other field of it; the seam at 12 o'clock is no edge. */
export function zoneOutline({ fields }: WeakestZone, frame: MapFrame): [Place, Place][] {
  const near = (a: number, b: number): boolean => Math.abs(a - b) < 1e-6
  return fields.flatMap((one) => {
    const [x1, x2, y1, y2] = [frame.x(one.fromMm), frame.x(one.toMm), frame.y(one.fromDeg), frame.y(one.toDeg)]
    const isIn = (picks: (other: typeof one) => boolean): boolean =>
      fields.some((other) => other !== one && picks(other))
    const sameRow = (other: typeof one): boolean => near(other.fromDeg, one.fromDeg) && near(other.toDeg, one.toDeg)
    const sameColumn = (other: typeof one): boolean => near(other.fromMm, one.fromMm)
    const edges: [Place, Place][] = []
    if (!isIn((other) => sameRow(other) && near(other.toMm, one.fromMm)))
      edges.push([
        [x1, y1],
        [x1, y2],
      ])
    if (!isIn((other) => sameRow(other) && near(other.fromMm, one.toMm)))
      edges.push([
        [x2, y1],
        [x2, y2],
      ])
    if (!near(one.fromDeg, 0) && !isIn((other) => sameColumn(other) && near(other.toDeg, one.fromDeg)))
      edges.push([
        [x1, y1],
        [x2, y1],
      ])
    if (!near(one.toDeg, 360) && !isIn((other) => sameColumn(other) && near(other.fromDeg, one.toDeg)))
      edges.push([
        [x1, y2],
        [x2, y2],
      ])
    return edges
  })
}

/** Station lines with their names below, clock positions at the left; 12 o'clock at both edges. */
export function mapAxes(
  stations: readonly { name: string; mm: number }[],
  ring: readonly { clock: string; deg: number }[],
  frame: MapFrame,
): Shape[] {
  const rows = ring.flatMap((one) => (one.deg === 0 ? [one, { ...one, deg: 360 }] : [one]))
  return [
    {
      kind: 'segments',
      style: 'axis',
      segments: stations.map((one): [Place, Place] => [
        [frame.x(one.mm), frame.top],
        [frame.x(one.mm), frame.bottom],
      ]),
    },
    ...rows.map(
      (row): Shape => ({
        kind: 'text',
        x: frame.left - 24,
        y: frame.y(row.deg) + 4,
        text: row.clock,
        style: 'figure',
        anchor: 'end',
      }),
    ),
    ...stations.map(
      (one): Shape => ({
        kind: 'text',
        x: frame.x(one.mm),
        y: frame.bottom + 32,
        text: `${one.name} ${one.mm > 0 ? '+' : one.mm < 0 ? '−' : ''}${Math.abs(one.mm)}`,
        style: 'figure',
        anchor: 'middle',
      }),
    ),
  ]
}
