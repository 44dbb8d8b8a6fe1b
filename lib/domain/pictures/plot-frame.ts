import type { PictureFormat, Place, Shape } from './picture'

/** A plot's room in its picture, px, and what its axes run over. */
export type PlotFrame = {
  widthPx: number
  heightPx: number
  left: number
  right: number
  top: number
  bottom: number
  x: (value: number) => number
  y: (value: number) => number
  xSpan: readonly [number, number]
  ySpan: readonly [number, number]
}

/** Height of a row of the legend, px. */
export const LEGEND_PX = 17
const HOUR_MS = 3_600_000
const STEPS_MS = [5, 10, 15, 30, 60, 120, 180, 240, 360, 720, 1440, 2880].map((minutes) => minutes * 60_000)

/** A frame over time (ms, across) and a value (up), with room for its labels. */
export function plotFrame(
  format: PictureFormat,
  xSpan: readonly [number, number],
  ySpan: readonly [number, number],
  room: { legendRows: number; rightPx?: number },
): PlotFrame {
  const [widthPx, plotPx] = format === 'wide' ? [620, 200] : [380, 230]
  const heightPx = 26 + plotPx + 58 + room.legendRows * LEGEND_PX
  const [left, right, top, bottom] = [48, widthPx - (room.rightPx ?? 18), 26, 26 + plotPx]
  const spread = xSpan[1] - xSpan[0] || 1
  const rise = ySpan[1] - ySpan[0] || 1
  return {
    widthPx,
    heightPx,
    left,
    right,
    top,
    bottom,
    xSpan,
    ySpan,
    x: (value) => left + ((value - xSpan[0]) / spread) * (right - left),
    y: (value) => bottom - ((value - ySpan[0]) / rise) * (bottom - top),
  }
}

/** A span of values widened to whole steps, so that no line lies on the frame; never narrower than `leastSpread`, so that the last digit does not look like a swing. */
export function niceSpan(values: readonly number[], leastSpread = 0): [number, number] {
  const room = Math.max(0, leastSpread - (Math.max(...values) - Math.min(...values))) / 2
  const [low, high] = [Math.min(...values) - room, Math.max(...values) + room]
  const step = niceStep(high - low || Math.abs(high) * 0.02 || 1, 4)
  return [Math.floor(low / step - 0.25) * step, Math.ceil(high / step + 0.25) * step]
}

/** A step of 1, 2 or 5 times a power of ten that cuts a spread into about so many parts. */
export function niceStep(spread: number, parts: number): number {
  const raw = spread / parts
  const power = 10 ** Math.floor(Math.log10(raw))
  return ([1, 2, 5, 10].find((one) => raw <= one * power * 1.0001) ?? 10) * power
}

/** Ground, grid lines, figures on both axes and the caption under them. `offset` is the UTC offset that clock times are shown in. */
export function axisShapes(
  frame: PlotFrame,
  words: { unit: string; caption: string; offset: string; yStep?: number },
): Shape[] {
  const { left, right, top, bottom } = frame
  const yStep = words.yStep ?? niceStep(frame.ySpan[1] - frame.ySpan[0], 4)
  const places = Math.max(0, -Math.floor(Math.log10(yStep) + 1e-9))
  const levels = steps(frame.ySpan, yStep)
  const moments = timeTicks(frame.xSpan, words.offset, frame.widthPx > 500 ? 8 : 4)
  return [
    {
      kind: 'polygon',
      style: 'ground',
      points: [
        [left, top],
        [right, top],
        [right, bottom],
        [left, bottom],
      ],
    },
    {
      kind: 'segments',
      style: 'axis',
      segments: [
        ...levels.map((level): [Place, Place] => [
          [left, frame.y(level)],
          [right, frame.y(level)],
        ]),
        ...moments.map(({ atMs }): [Place, Place] => [
          [frame.x(atMs), top],
          [frame.x(atMs), bottom],
        ]),
      ],
    },
    ...levels.map(
      (level): Shape => ({
        kind: 'text',
        x: left - 7,
        y: frame.y(level) + 4,
        text: level.toFixed(places).replace('-', '−'),
        style: 'figure',
        anchor: 'end',
      }),
    ),
    { kind: 'text', x: left - 7, y: top - 10, text: words.unit, style: 'note', anchor: 'end' },
    ...moments.flatMap(({ atMs, clock, day }): Shape[] => [
      { kind: 'text', x: frame.x(atMs), y: bottom + 16, text: clock, style: 'figure', anchor: 'middle' },
      ...(day
        ? [{ kind: 'text', x: frame.x(atMs), y: bottom + 30, text: day, style: 'note', anchor: 'middle' } as const]
        : []),
    ]),
    { kind: 'text', x: left, y: frame.heightPx - 8, text: words.caption, style: 'note', anchor: 'start' },
  ]
}

function steps([from, to]: readonly [number, number], step: number): number[] {
  const first = Math.ceil(from / step - 1e-9)
  const last = Math.floor(to / step + 1e-9)
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, at) => (first + at) * step)
}

/** Round clock times inside a span, at most about so many, with the day under the first of each day. */
export function timeTicks(
  [from, to]: readonly [number, number],
  offset: string,
  most: number,
): { atMs: number; clock: string; day: string | null }[] {
  const shift = offsetMs(offset)
  const step = STEPS_MS.find((one) => (to - from) / one <= most) ?? Math.ceil((to - from) / most / HOUR_MS) * HOUR_MS
  let lastDay = ''
  return steps([from + shift, to + shift], step).map((local) => {
    const text = new Date(local).toISOString()
    const day = text.slice(5, 10)
    const isNew = day !== lastDay
    lastDay = day
    return { atMs: local - shift, clock: text.slice(11, 16), day: isNew ? day : null }
  })
}

/** Milliseconds of a UTC offset such as `+01:00`. */
export function offsetMs(offset: string): number {
  if (offset === 'Z') return 0
  const minutes = Number(offset.slice(1, 3)) * 60 + Number(offset.slice(4, 6))
  return (offset.startsWith('-') ? -1 : 1) * minutes * 60_000
}

/** Clock time of an instant in an offset, `06:00`, with its day where asked: `05-13 06:00`. */
export function clockAt(atMs: number, offset: string, withDay = false): string {
  const text = new Date(atMs + offsetMs(offset)).toISOString()
  return withDay ? `${text.slice(5, 10)} ${text.slice(11, 16)}` : text.slice(11, 16)
}

/** Points of a long series thinned for drawing: first, last, lowest and highest of each of so many parts are kept. */
export function thinned<T extends { atMs: number }>(
  points: readonly T[],
  levelOf: (one: T) => number,
  parts = 240,
): T[] {
  if (points.length <= parts * 4) return [...points]
  const size = Math.ceil(points.length / parts)
  const kept: T[] = []
  for (let at = 0; at < points.length; at += size) {
    const part = points.slice(at, at + size)
    const by = [...part].sort((a, b) => levelOf(a) - levelOf(b))
    const ends = [part[0], by[0], by.at(-1), part.at(-1)].filter((one): one is T => one !== undefined)
    kept.push(...[...new Set(ends)].sort((a, b) => a.atMs - b.atMs))
  }
  return kept
}
