import type { VerdictKind } from '../judge/verdict'
import { showReading, showUnit, type Unit } from '../reading'
import type { Grid, MarkedReading } from '../records/common'
import { edgesOf, frameCorners, type MapFrame, type MapStation, mapFrame, mapPlaces } from './map-frame'
import { mapAxes, zoneOutline } from './map-lines'
import { markShapes } from './mark-shapes'
import type { Picture, PictureFormat, Shape } from './picture'
import { mapValues, type ShadeSteps, shadeSteps, shadingShapes, stepLegend, stepLegendPx } from './surface-shading'
import { type WeakestZone, weakestZone } from './weakest-zone'

export type SurfaceMapInput = {
  title: string
  grid: Grid
  readings: readonly MarkedReading[]
  /** Verdict on the reading at a mark; null when no criterion judges it. */
  verdictAt: (mark: string) => VerdictKind | null
  unit: Unit
  /** The limit in words, `each ≥ 74`; null when the specification has none. */
  limit: string | null
  /** Number and spacing of marks, demanded and taken, in words. */
  marks?: string
}

/**
 * The pipe unrolled: station against clock position, 12 o'clock at both edges. Marks that pass are rings, that fail are diamonds, not proven are barred by their
 * colour and shape (a six-sided frame); values that are no number stand in a square. Between the marks the shading goes in hatched steps, periodic round the
 * clock; the weakest zone is outlined and named.
 */
export function surfaceMapPicture(input: SurfaceMapInput, format: PictureFormat = 'wide'): Picture {
  const { stations, ring } = mapPlaces(input.grid)
  const byMark = new Map(input.readings.map((one) => [one.mark, one.reading]))
  const values = mapValues(stations, ring, byMark, input.unit)
  const steps = shadeSteps(values)
  const zone = weakestZone({
    stations,
    ring,
    byMark,
    unit: input.unit,
    verdictAt: input.verdictAt,
    lowestStepTop: steps ? steps.from + steps.step : Number.NEGATIVE_INFINITY,
  })
  const { frame, widthPx, heightPx, legend, notes } = roomOf(input, zone, stations, format, steps)
  const marks = stations.flatMap((station) =>
    ring.flatMap(({ clock, deg }) => {
      const mark = `${station.name}-${clock}`
      return edgesOf(deg).flatMap((each) =>
        markShapes(frame.x(station.mm), frame.y(each), mark, byMark.get(mark), input.verdictAt(mark)),
      )
    }),
  )
  const figures = input.readings.map((one) => showReading(one.reading))
  return {
    widthPx,
    heightPx,
    title: input.title,
    description: `${input.title}. ${input.limit ? `Limit: ${input.limit}. ` : ''}${zone ? `${zone.text}. ` : ''}${input.marks ? `${input.marks}. ` : ''}${figures.length} readings: ${figures.join(', ')}`,
    shapes: [
      { kind: 'polygon', style: 'ground', points: frameCorners(frame) },
      ...shadingShapes(stations, ring, values, steps, frame),
      ...mapAxes(stations, ring, frame),
      ...(zone ? [{ kind: 'segments', style: 'zone', segments: zoneOutline(zone, frame) } as const] : []),
      ...marks,
      ...stepLegend(steps, showUnit(input.unit), frame.left, frame.bottom + 42, legend.roomPx),
      ...notes.map(
        (text, row): Shape => ({
          kind: 'text',
          x: format === 'wide' ? frame.left : 8,
          y: frame.bottom + 46 + legend.heightPx + 12 + row * 16,
          text: text.words,
          style: text.isZone ? 'label' : 'note',
          anchor: 'start',
        }),
      ),
    ],
  }
}

function roomOf(
  input: SurfaceMapInput,
  zone: WeakestZone | null,
  stations: readonly MapStation[],
  format: PictureFormat,
  steps: ShadeSteps | null,
): {
  frame: MapFrame
  widthPx: number
  heightPx: number
  legend: { roomPx: number; heightPx: number }
  notes: { words: string; isZone: boolean }[]
} {
  const isWide = format === 'wide'
  const widthPx = isWide ? 620 : 380
  const most = isWide ? 80 : 50
  const words = [
    ...(input.limit ? [`limit: ${input.limit}`] : []),
    ...(input.marks ? [input.marks] : []),
    `across: station and mm from the leak; down: clock position; ${showUnit(input.unit)}`,
  ]
  const notes = [
    ...(zone ? linesOf(sentence(zone.text), most - 8).map((line) => ({ words: line, isZone: true })) : []),
    ...words.flatMap((text) => linesOf(text, most)).map((line) => ({ words: line, isZone: false })),
  ]
  const [left, right, top, bottom] = [isWide ? 64 : 46, widthPx - 34, 24, isWide ? 224 : 254]
  const roomPx = widthPx - left - 40
  const legend = { roomPx, heightPx: stepLegendPx(steps, roomPx) }
  return {
    frame: mapFrame({ left, right, top, bottom }, stations),
    widthPx,
    heightPx: bottom + 46 + legend.heightPx + notes.length * 16 + 6,
    legend,
    notes,
  }
}

function sentence(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1)
}

function linesOf(text: string, most: number): string[] {
  const lines: string[] = []
  for (const word of text.split(' ')) {
    const last = lines.at(-1)
    if (last !== undefined && last.length + word.length < most) lines[lines.length - 1] = `${last} ${word}`
    else lines.push(word)
  }
  return lines
}
