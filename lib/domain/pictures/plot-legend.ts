import type { Shape, StyleName } from './picture'
import { LEGEND_PX, type PlotFrame } from './plot-frame'

export type LegendEntry = { style: StyleName; text: string; sign?: 'line' | 'area' | 'dot' }

/** Rows that a legend needs: one entry to a row, so that no name runs into the next. */
export function legendRows(entries: readonly LegendEntry[]): number {
  return entries.length
}

/** The legend under a plot's time axis: each line as it is drawn, beside its name. */
export function legendShapes(frame: PlotFrame, entries: readonly LegendEntry[]): Shape[] {
  const top = frame.bottom + 46
  return entries.flatMap((entry, row): Shape[] => {
    const y = top + row * LEGEND_PX
    const { left } = frame
    const sign: Shape =
      entry.sign === 'area'
        ? {
            kind: 'polygon',
            style: entry.style,
            points: [
              [left, y - 10],
              [left + 30, y - 10],
              [left + 30, y],
              [left, y],
            ],
          }
        : entry.sign === 'dot'
          ? { kind: 'circle', style: entry.style, x: left + 15, y: y - 4, radiusPx: 3.4 }
          : {
              kind: 'polyline',
              style: entry.style,
              points: [
                [left, y - 4],
                [left + 30, y - 4],
              ],
            }
    return [sign, { kind: 'text', x: left + 38, y, text: entry.text, style: 'note', anchor: 'start' }]
  })
}
