import { thicknessMap } from '@/lib/calc/thickness-map'
import { toNumber } from '../decimal'
import type { VerdictKind } from '../judge/verdict'
import { type Reading, showReading, showUnit, type Unit } from '../reading'
import type { Grid, MarkedReading } from '../records/common'
import { markShapes } from './mark-shapes'
import type { Picture, Shape } from './picture'

export type SurfaceMapInput = {
  title: string
  grid: Grid
  readings: readonly MarkedReading[]
  /** Verdict on the reading at a mark; null when no criterion judges it. */
  verdictAt: (mark: string) => VerdictKind | null
  unit: Unit
  /** The limit in words, `each ≥ 74`; null when the specification has none. */
  limit: string | null
}

const WIDTH_PX = 720
const HEIGHT_PX = 284
const [LEFT_PX, RIGHT_PX, TOP_PX, BOTTOM_PX] = [64, 34, 24, 60]
const [COLUMNS, ROWS] = [60, 32]

/**
 * The pipe unrolled: station against clock position, 12 o'clock at both edges. Marks that pass are rings, that fail are diamonds, not proven are
 * barred by their colour and shape (a six-sided frame); values that are no number stand in a square. Between marks the shading is bilinear and
 * periodic round the clock; beside a reading that is no number nothing is shaded.
 */
export function surfaceMapPicture(input: SurfaceMapInput): Picture {
  const stations = input.grid.stations
    .map((one) => ({ name: one.name, mm: toNumber(one.fromLeak) }))
    .sort((a, b) => a.mm - b.mm)
  const [first, last] = [stations[0]?.mm ?? 0, stations.at(-1)?.mm ?? 0]
  const x = (mm: number): number =>
    last === first
      ? (LEFT_PX + WIDTH_PX - RIGHT_PX) / 2
      : LEFT_PX + ((mm - first) / (last - first)) * (WIDTH_PX - LEFT_PX - RIGHT_PX)
  const y = (deg: number): number => TOP_PX + (deg / 360) * (HEIGHT_PX - TOP_PX - BOTTOM_PX)
  const byMark = new Map(input.readings.map((one) => [one.mark, one.reading]))
  const marks = stations.flatMap((station) =>
    input.grid.clocks.flatMap((clock) => {
      const mark = `${station.name}-${clock}`
      const reading = byMark.get(mark)
      const degrees = clockDegrees(clock)
      const at = degrees === 0 ? [0, 360] : [degrees]
      return at.flatMap((deg) => markShapes(x(station.mm), y(deg), mark, reading, input.verdictAt(mark)))
    }),
  )
  const figures = input.readings.map((one) => showReading(one.reading))
  return {
    widthPx: WIDTH_PX,
    heightPx: HEIGHT_PX,
    title: input.title,
    description: `${input.title}. ${input.limit ? `Limit: ${input.limit}. ` : ''}${figures.length} readings: ${figures.join(', ')}`,
    shapes: [
      {
        kind: 'polygon',
        style: 'ground',
        points: [
          [LEFT_PX, TOP_PX],
          [WIDTH_PX - RIGHT_PX, TOP_PX],
          [WIDTH_PX - RIGHT_PX, HEIGHT_PX - BOTTOM_PX],
          [LEFT_PX, HEIGHT_PX - BOTTOM_PX],
        ],
      },
      shading(stations, input.grid.clocks, byMark),
      ...axes(stations, input.grid.clocks, x, y, input),
      ...marks,
    ],
  }
}

/** Degrees from 12 o'clock of a clock position such as `6`, `1.5` or `1:30`. */
export function clockDegrees(clock: string): number {
  const [hours = '0', minutes] = clock.split(':')
  return ((Number(hours) + Number(minutes ?? 0) / 60) * 30) % 360
}

function shading(
  stations: { name: string; mm: number }[],
  clocks: readonly string[],
  byMark: Map<string, Reading>,
): Shape {
  const ring = [...clocks].sort((a, b) => clockDegrees(a) - clockDegrees(b))
  const values = stations.map((station) =>
    ring.map((clock) => {
      const reading = byMark.get(`${station.name}-${clock}`)
      return reading?.kind === 'number' ? toNumber(reading) : null
    }),
  )
  const numbers = values.flat().flatMap((one) => (one === null ? [] : [one]))
  const [low, high] = [Math.min(...numbers), Math.max(...numbers)]
  const [first, last] = [stations[0]?.mm ?? 0, stations.at(-1)?.mm ?? 0]
  const axialMm = stations.map((one) => one.mm)
  const anglesDeg = ring.map(clockDegrees)
  const share = (index: number): number | null => {
    const answer = thicknessMap({
      axialMm,
      anglesDeg,
      values,
      xMm: first + ((last - first) * ((index % COLUMNS) + 0.5)) / COLUMNS,
      angleDeg: (360 * (Math.floor(index / COLUMNS) + 0.5)) / ROWS,
    })
    return 'refused' in answer ? null : high === low ? 1 : (answer.value - low) / (high - low)
  }
  const isShaded = stations.length > 1 && ring.length > 2 && numbers.length > 0
  return {
    kind: 'cells',
    x: LEFT_PX,
    y: TOP_PX,
    columns: COLUMNS,
    cellWidthPx: (WIDTH_PX - LEFT_PX - RIGHT_PX) / COLUMNS,
    cellHeightPx: (HEIGHT_PX - TOP_PX - BOTTOM_PX) / ROWS,
    shares: Array.from({ length: COLUMNS * ROWS }, (_, index) => (isShaded ? share(index) : null)),
  }
}

function axes(
  stations: { name: string; mm: number }[],
  clocks: readonly string[],
  x: (mm: number) => number,
  y: (deg: number) => number,
  input: SurfaceMapInput,
): Shape[] {
  const rows = clocks.flatMap((clock) =>
    clockDegrees(clock) === 0
      ? [
          { clock, deg: 0 },
          { clock, deg: 360 },
        ]
      : [{ clock, deg: clockDegrees(clock) }],
  )
  return [
    {
      kind: 'segments',
      style: 'axis',
      segments: stations.map((one) => [
        [x(one.mm), y(0)],
        [x(one.mm), y(360)],
      ]),
    },
    ...rows.map(
      (row): Shape => ({
        kind: 'text',
        x: LEFT_PX - 24,
        y: y(row.deg) + 4,
        text: row.clock,
        style: 'figure',
        anchor: 'end',
      }),
    ),
    ...stations.map(
      (one): Shape => ({
        kind: 'text',
        x: x(one.mm),
        y: HEIGHT_PX - 28,
        text: `${one.name} ${one.mm > 0 ? '+' : one.mm < 0 ? '−' : ''}${Math.abs(one.mm)}`,
        style: 'figure',
        anchor: 'middle',
      }),
    ),
    {
      kind: 'text',
      x: LEFT_PX,
      y: HEIGHT_PX - 7,
      text: `station and mm from the leak, across; clock position, down; readings in ${showUnit(input.unit)}${input.limit ? `, ${input.limit}` : ''}`,
      style: 'note',
      anchor: 'start',
    },
  ]
}
