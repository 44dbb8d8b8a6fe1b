import { toNumber } from '../decimal'
import type { Grid } from '../records/common'
import type { Place } from './picture'

/** Where the unrolled pipe lies in a picture: station in mm across, degrees from 12 o'clock down. */
export type MapFrame = {
  left: number
  right: number
  top: number
  bottom: number
  x: (mm: number) => number
  y: (deg: number) => number
}
export type MapStation = { name: string; mm: number }
export type MapClock = { clock: string; deg: number }

/** The stations and clock positions of a grid, in their order on the pipe. */
export function mapPlaces(grid: Grid): { stations: MapStation[]; ring: MapClock[] } {
  return {
    stations: grid.stations.map((one) => ({ name: one.name, mm: toNumber(one.fromLeak) })).sort((a, b) => a.mm - b.mm),
    ring: grid.clocks.map((clock) => ({ clock, deg: clockDegrees(clock) })).sort((a, b) => a.deg - b.deg),
  }
}

/** The frame of a map within these edges, to scale along the pipe; one station alone stands in the middle. */
export function mapFrame(
  { left, right, top, bottom }: Pick<MapFrame, 'left' | 'right' | 'top' | 'bottom'>,
  stations: readonly MapStation[],
): MapFrame {
  const [first, last] = [stations[0]?.mm ?? 0, stations.at(-1)?.mm ?? 0]
  return {
    left,
    right,
    top,
    bottom,
    x: (mm) => (last === first ? (left + right) / 2 : left + ((mm - first) / (last - first)) * (right - left)),
    y: (deg) => top + (deg / 360) * (bottom - top),
  }
}

/** The corners of a frame, for its ground. */
export function frameCorners({ left, right, top, bottom }: MapFrame): Place[] {
  return [
    [left, top],
    [right, top],
    [right, bottom],
    [left, bottom],
  ]
}

/** Where on the way round a clock position is drawn: 12 o'clock at both edges. */
export function edgesOf(deg: number): number[] {
  return deg === 0 ? [0, 360] : [deg]
}

/** Degrees from 12 o'clock of a clock position such as `6`, `1.5` or `1:30`. */
export function clockDegrees(clock: string): number {
  const [hours = '0', minutes] = clock.split(':')
  return ((Number(hours) + Number(minutes ?? 0) / 60) * 30) % 360
}
