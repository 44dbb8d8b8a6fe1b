import { toNumber } from '../decimal'
import { convertExact } from '../judge/exact-units'
import type { Picture, PictureFormat, Place, Shape } from './picture'
import { axisShapes, niceSpan, type PlotFrame, plotFrame } from './plot-frame'
import { type LegendEntry, legendRows, legendShapes } from './plot-legend'
import type { PressurePlot, PressurePoint } from './pressure-plot'
import { heightAt } from './profile-line'

/**
 * Pressure over time: the gauge's readings as dots, the same corrected for steel temperature as the thick line, a second gauge as a dotted line, and the lines of
 * the specification: the lowest that the allowed drop leaves and the test pressure itself.
 */
export function pressurePicture(plot: PressurePlot, format: PictureFormat = 'wide'): Picture {
  const least = leastMpa(plot)
  const values = [
    ...plot.points.flatMap((one) => [one.mpa, ...(one.correctedMpa === null ? [] : [one.correctedMpa])]),
    ...plot.points.flatMap((one) => (one.second ? [one.second.mpa] : [])),
    ...(plot.allowed ? [plot.allowed.mpa] : []),
    ...(least === null ? [] : [least]),
  ]
  const entries = legendOf(plot)
  const times = plot.points.map((one) => one.atMs)
  const frame = plotFrame(
    format,
    [Math.min(...times) - 180_000, Math.max(...times) + 180_000],
    niceSpan(values.length > 0 ? values : [0, 1]),
    { legendRows: legendRows(entries) },
  )
  const corrected = plot.points.flatMap((one): Place[] =>
    one.correctedMpa === null ? [] : [[frame.x(one.atMs), frame.y(one.correctedMpa)]],
  )
  return {
    widthPx: frame.widthPx,
    heightPx: frame.heightPx,
    title: 'Pressure over the test',
    description: `${plot.sentence} ${plot.points.map((one) => `${one.at.slice(11, 16)} ${one.shown}${one.second ? `, second gauge ${one.second.shown}` : ''}${one.steel ? `, steel ${one.steel}` : ''}`).join('; ')}`,
    shapes: [
      ...axisShapes(frame, {
        unit: 'MPa',
        caption: `time across, ${plot.offset === 'Z' ? 'UTC' : `UTC${plot.offset}`}`,
        offset: plot.offset,
      }),
      ...(plot.allowed ? [level(frame, plot.allowed.mpa, 'limit-line')] : []),
      ...(least === null ? [] : [level(frame, least, 'moment-line')]),
      ...(corrected.length > 1 ? [{ kind: 'polyline', style: 'series-coldest', points: corrected } as const] : []),
      ...secondShapes(frame, plot.points),
      ...plot.points.flatMap((one) => readingShapes(frame, one, corrected)),
      ...legendShapes(frame, entries),
    ],
  }
}

function leastMpa({ least }: PressurePlot): number | null {
  const exact = least && convertExact(least.value, least.unit, 'MPa')
  return exact ? toNumber(exact) : null
}

function legendOf(plot: PressurePlot): LegendEntry[] {
  const [gauge, second] = plot.gauges
  return [
    { style: 'dot', sign: 'dot', text: `as read${gauge ? ` on ${gauge}` : ''}` },
    ...(plot.points.some((one) => one.correctedMpa !== null)
      ? [{ style: 'series-coldest', text: 'corrected to the first steel temperature' } as const]
      : []),
    ...(plot.points.some((one) => one.second)
      ? [{ style: 'series-second', text: `second gauge${second ? ` ${second}` : ''}` } as const]
      : []),
    ...(plot.allowed ? [{ style: 'limit-line', text: `${plot.allowed.text}` } as const] : []),
    ...(plot.least
      ? [
          {
            style: 'moment-line',
            text: `test pressure ${plot.least.text}`,
          } as const,
        ]
      : []),
  ]
}

function level(frame: PlotFrame, value: number, style: 'limit-line' | 'moment-line'): Shape {
  return {
    kind: 'polyline',
    style,
    points: [
      [frame.left, frame.y(value)],
      [frame.right, frame.y(value)],
    ],
  }
}

function secondShapes(frame: PlotFrame, points: readonly PressurePoint[]): Shape[] {
  const places = points.flatMap((one): Place[] => (one.second ? [[frame.x(one.atMs), frame.y(one.second.mpa)]] : []))
  return places.length > 1 ? [{ kind: 'polyline', style: 'series-second', points: places }] : []
}

/** A reading's dot and figure: above the dot, or below it where the corrected line would cross the figure. */
function readingShapes(frame: PlotFrame, one: PressurePoint, corrected: readonly Place[]): Shape[] {
  const [x, y] = [frame.x(one.atMs), frame.y(one.mpa)]
  const line = corrected.length > 1 ? heightAt(corrected, x) : y
  const isCrossed = line < y - 3 && line > y - 24
  return [
    { kind: 'circle', style: 'dot', x, y, radiusPx: 3.4 },
    {
      kind: 'text',
      x,
      y: isCrossed ? y + 17 : y - 9,
      text: one.shown.replace(' MPa', ''),
      style: 'label',
      anchor: 'middle',
    },
  ]
}
