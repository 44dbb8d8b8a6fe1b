import { thicknessMap } from '@/lib/calc/thickness-map'
import { fractionOf, toNumber } from '../decimal'
import { convertExact } from '../judge/exact-units'
import type { Reading, Unit } from '../reading'
import type { MapFrame } from './map-frame'
import type { Place, Shape } from './picture'
import { niceStep } from './plot-frame'

export type ShadeSteps = { from: number; step: number; count: number; places: number }

const [COLUMNS, ROWS] = [60, 32]
/** Raster rows from one hatch line to the next, from the lowest step upwards; the steps above them are not hatched. */
const HATCH_EVERY = [1, 2, 4]

/** The numbers of a map in its unit, stations across and clock positions down; null where a mark has no number. */
export function mapValues(
  stations: readonly { name: string }[],
  ring: readonly { clock: string }[],
  byMark: ReadonlyMap<string, Reading>,
  unit: Unit,
): (number | null)[][] {
  return stations.map((station) =>
    ring.map(({ clock }) => {
      const reading = byMark.get(`${station.name}-${clock}`)
      const value = reading?.kind === 'number' ? convertExact(fractionOf(reading), reading.unit, unit) : null
      return value ? toNumber(value) : null
    }),
  )
}

/** Round steps that the numbers of a map fall into; null when there are none. */
export function shadeSteps(values: readonly (readonly (number | null)[])[]): ShadeSteps | null {
  const numbers = values.flat().flatMap((one) => (one === null ? [] : [one]))
  if (numbers.length === 0) return null
  const [low, high] = [Math.min(...numbers), Math.max(...numbers)]
  const step = niceStep(high - low || Math.abs(high) * 0.1 || 1, 4)
  const first = Math.floor(low / step + 1e-9)
  const count = Math.max(1, Math.ceil(high / step + 1e-9) - first)
  return { from: first * step, step, count, places: Math.max(0, -Math.floor(Math.log10(step) + 1e-9)) }
}

/** Which step a value falls into, 0 the lowest. */
export function stepOf(value: number, steps: ShadeSteps): number {
  return Math.min(steps.count - 1, Math.max(0, Math.floor((value - steps.from) / steps.step + 1e-9)))
}

/**
 * Shading between the marks in steps, bilinear and periodic round the pipe, with hatch lines that grow denser towards the lowest step, so that it reads without
 * colour. Beside a mark without a number, and beyond the marked stations, nothing is shaded.
 */
export function shadingShapes(
  stations: readonly { mm: number }[],
  ring: readonly { deg: number }[],
  values: readonly (readonly (number | null)[])[],
  steps: ShadeSteps | null,
  frame: MapFrame,
): Shape[] {
  if (!steps || stations.length < 2 || ring.length < 3) return []
  const [first, last] = [stations[0]?.mm ?? 0, stations.at(-1)?.mm ?? 0]
  const axialMm = stations.map((one) => one.mm)
  const anglesDeg = ring.map((one) => one.deg)
  const levels = Array.from({ length: COLUMNS * ROWS }, (_, index): number | null => {
    const answer = thicknessMap({
      axialMm,
      anglesDeg,
      values: values.map((row) => [...row]),
      xMm: first + ((last - first) * ((index % COLUMNS) + 0.5)) / COLUMNS,
      angleDeg: (360 * (Math.floor(index / COLUMNS) + 0.5)) / ROWS,
    })
    return 'refused' in answer ? null : stepOf(answer.value, steps)
  })
  const [cellWidthPx, cellHeightPx] = [(frame.right - frame.left) / COLUMNS, (frame.bottom - frame.top) / ROWS]
  return [
    {
      kind: 'cells',
      x: frame.left,
      y: frame.top,
      columns: COLUMNS,
      cellWidthPx,
      cellHeightPx,
      shares: levels.map((level) => (level === null ? null : shareOf(level, steps))),
    },
    { kind: 'segments', style: 'step', segments: hatchSegments(levels, frame, cellWidthPx, cellHeightPx) },
  ]
}

/** Share of the shading of a step: the lowest dark, the highest pale. */
export function shareOf(level: number, steps: ShadeSteps): number {
  return steps.count === 1 ? 1 : level / (steps.count - 1)
}

function hatchSegments(
  levels: readonly (number | null)[],
  frame: MapFrame,
  width: number,
  height: number,
): [Place, Place][] {
  return Array.from({ length: ROWS }, (_, row) => row).flatMap((row) => {
    const y = frame.top + (row + 0.5) * height
    const isHatched = (column: number): boolean => {
      const level = levels[row * COLUMNS + column]
      const every = level === null || level === undefined ? undefined : HATCH_EVERY[level]
      return every !== undefined && row % every === 0
    }
    const segments: [Place, Place][] = []
    for (let column = 0; column < COLUMNS; column += 1) {
      if (!isHatched(column)) continue
      let end = column
      while (end + 1 < COLUMNS && isHatched(end + 1)) end += 1
      segments.push([
        [frame.left + column * width, y],
        [frame.left + (end + 1) * width, y],
      ])
      column = end
    }
    return segments
  })
}

const LEGEND_ROW_PX = 24
/** Room for a swatch with its figures; a phone's picture has several rows of them. */
const SWATCH_PX = 92

function columnsOf(steps: ShadeSteps, roomPx: number): number {
  return Math.max(1, Math.min(steps.count, Math.floor(roomPx / SWATCH_PX)))
}

/** Height of the legend in that room, px. */
export function stepLegendPx(steps: ShadeSteps | null, roomPx: number): number {
  return LEGEND_ROW_PX * (steps ? Math.ceil(steps.count / columnsOf(steps, roomPx)) : 1)
}

/** The steps as swatches with their figures, hatched as on the map. */
export function stepLegend(steps: ShadeSteps | null, unit: string, x: number, y: number, roomPx: number): Shape[] {
  if (!steps) return []
  const columns = columnsOf(steps, roomPx)
  const width = Math.min(112, roomPx / columns)
  return Array.from({ length: steps.count }, (_, level): Shape[] => {
    const left = x + (level % columns) * width
    const top = y + Math.floor(level / columns) * LEGEND_ROW_PX
    const every = HATCH_EVERY[level]
    const [from, to] = [steps.from + level * steps.step, steps.from + (level + 1) * steps.step]
    return [
      {
        kind: 'cells',
        x: left,
        y: top,
        columns: 1,
        cellWidthPx: 22,
        cellHeightPx: 16,
        shares: [shareOf(level, steps)],
      },
      {
        kind: 'polygon',
        style: 'frame',
        points: [
          [left, top],
          [left + 22, top],
          [left + 22, top + 16],
          [left, top + 16],
        ],
      },
      {
        kind: 'segments',
        style: 'step',
        segments:
          every === undefined
            ? []
            : [2, 6, 10, 14]
                .filter((_, at) => at % every === 0)
                .map((dy): [Place, Place] => [
                  [left, top + dy],
                  [left + 22, top + dy],
                ]),
      },
      {
        kind: 'text',
        x: left + 27,
        y: top + 12,
        text: `${from.toFixed(steps.places)}–${to.toFixed(steps.places)}${level === steps.count - 1 ? ` ${unit}` : ''}`,
        style: 'note',
        anchor: 'start',
      },
    ]
  }).flat()
}
