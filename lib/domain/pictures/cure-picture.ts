import { toNumber } from '../decimal'
import { cureCaption, cureLegend } from './cure-legend'
import type { CurePlot, CureProbe } from './cure-plot'
import type { Picture, PictureFormat, Place, Shape } from './picture'
import { axisShapes, clockAt, niceSpan, type PlotFrame, plotFrame, thinned } from './plot-frame'
import { legendRows, legendShapes } from './plot-legend'

/** Temperatures never fill less than this of the height. */
const LEAST_SPREAD_K = 4

/**
 * Temperature over time at every probe: the coldest as the thick line with its points, the rule's temperature as a dashed line, breaks as hatched-edged areas, the
 * moment that the rule was met as an upright line with its time. For an `equivalent` rule the share reached at the coldest probe runs on the right axis.
 */
export function curePicture(plot: CurePlot, format: PictureFormat = 'wide'): Picture {
  const all = [...plot.probes.flatMap((one) => one.stretches.flat()), ...plot.ambient]
  const times = all.map((one) => one.atMs)
  const temps = all.map((one) => toNumber(one.temp))
  const least = plot.rule?.kind === 'cure-hold' ? toNumber(plot.rule.atLeastTemp) : null
  const curve = plot.probes.find((one) => one.isColdest)?.curve ?? null
  const entries = cureLegend(plot)
  const frame = plotFrame(
    format,
    times.length > 0 ? [Math.min(...times), Math.max(...times)] : [0, 1],
    niceSpan(temps.length > 0 ? [...temps, ...(least === null ? [] : [least])] : [0, 1], LEAST_SPREAD_K),
    { legendRows: legendRows(entries), rightPx: curve ? 44 : 18 },
  )
  return {
    widthPx: frame.widthPx,
    heightPx: frame.heightPx,
    title: plot.title,
    description: `${plot.sentence} ${plot.probes.map((one) => `${one.clock} o’clock lowest ${one.lowest?.shown ?? 'not logged'}${one.reached ? `, ${one.reached}` : ''}`).join('; ')}`,
    shapes: [
      ...axisShapes(frame, { unit: '°C', caption: cureCaption(plot, format), offset: plot.offset }),
      ...plot.breaks.map((one): Shape => breakArea(frame, one)),
      ...(least === null ? [] : [level(frame, least)]),
      ...(plot.ambient.length > 0 ? [lineOf(frame, plot.ambient, 'series-ambient')] : []),
      ...plot.probes.filter((one) => !one.isColdest).flatMap((one) => probeShapes(frame, one)),
      ...plot.probes.filter((one) => one.isColdest).flatMap((one) => probeShapes(frame, one)),
      ...(curve ? shareShapes(frame, curve.points) : []),
      ...metShapes(frame, plot),
      ...legendShapes(frame, entries),
    ],
  }
}

function probeShapes(frame: PlotFrame, probe: CureProbe): Shape[] {
  const points = probe.stretches.flat()
  return [
    ...probe.stretches.map((stretch) => lineOf(frame, stretch, probe.isColdest ? 'series-coldest' : 'series')),
    ...(probe.isColdest && points.length <= 60
      ? points.map(
          (one): Shape => ({
            kind: 'circle',
            style: 'dot',
            x: frame.x(one.atMs),
            y: frame.y(toNumber(one.temp)),
            radiusPx: 2.6,
          }),
        )
      : []),
  ]
}

function lineOf(
  frame: PlotFrame,
  points: CurePlot['ambient'],
  style: 'series' | 'series-coldest' | 'series-ambient',
): Shape {
  const kept = thinned(points, (one) => toNumber(one.temp))
  return {
    kind: 'polyline',
    style,
    points: kept.map((one): Place => [frame.x(one.atMs), frame.y(toNumber(one.temp))]),
  }
}

function level(frame: PlotFrame, value: number): Shape {
  return {
    kind: 'polyline',
    style: 'limit-line',
    points: [
      [frame.left, frame.y(value)],
      [frame.right, frame.y(value)],
    ],
  }
}

function breakArea(frame: PlotFrame, { fromMs, toMs }: { fromMs: number; toMs: number }): Shape {
  const [left, right] = [frame.x(fromMs), Math.max(frame.x(toMs), frame.x(fromMs) + 2)]
  return {
    kind: 'polygon',
    style: 'break-area',
    points: [
      [left, frame.top],
      [right, frame.top],
      [right, frame.bottom],
      [left, frame.bottom],
    ],
  }
}

/** Equivalent cure from 0 at the foot to 1.25 at the top, with its figures on the right. */
function shareShapes(frame: PlotFrame, points: readonly { atMs: number; share: number }[]): Shape[] {
  const most = Math.max(1.25, ...points.map((one) => one.share))
  const y = (share: number): number => frame.bottom - (share / most) * (frame.bottom - frame.top)
  const kept = thinned(points, (one) => one.share)
  return [
    {
      kind: 'polyline',
      style: 'limit-line',
      points: [
        [frame.left, y(1)],
        [frame.right, y(1)],
      ],
    },
    {
      kind: 'polyline',
      style: 'series-second',
      points: kept.map((one): Place => [frame.x(one.atMs), y(one.share)]),
    },
    ...[0, 0.5, 1].map(
      (share): Shape => ({
        kind: 'text',
        x: frame.right + 6,
        y: y(share) + 4,
        text: share.toString(),
        style: 'figure',
        anchor: 'start',
      }),
    ),
  ]
}

function metShapes(frame: PlotFrame, plot: CurePlot): Shape[] {
  if (plot.metAtMs === null) return []
  const x = frame.x(plot.metAtMs)
  const isLate = x > (frame.left + frame.right) / 2
  return [
    {
      kind: 'polyline',
      style: 'moment-line',
      points: [
        [x, frame.top - 8],
        [x, frame.bottom],
      ],
    },
    {
      kind: 'polygon',
      style: 'mark-pass',
      points: [
        [x, frame.top - 8],
        [x + (isLate ? -12 : 12), frame.top - 14],
        [x, frame.top - 20],
      ],
    },
    {
      kind: 'text',
      x: x + (isLate ? -18 : 18),
      y: frame.top - 9,
      text: `rule met ${clockAt(plot.metAtMs, plot.offset, true)}`,
      style: 'label',
      anchor: isLate ? 'end' : 'start',
    },
  ]
}
