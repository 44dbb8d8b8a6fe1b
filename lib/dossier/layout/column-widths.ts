import type { Cell, Column } from '../blocks'
import type { FontMetrics } from './font-metrics'
import { naturalWidths } from './text-lines'

export const CELL_PAD_X_PT = 4.5
/** Room that a sign takes before its word. */
export function signRoomPt(sizePt: number): number {
  return sizePt + 4
}

/**
 * Widths of a table's columns: as wide as their longest line where all fit, otherwise the room is shared above each column's longest word.
 * A compact table keeps its natural width; any other is stretched to the room.
 */
export function columnWidths(
  columns: readonly Column[],
  rows: readonly (readonly Cell[])[],
  roomPt: number,
  sizePt: number,
  isCompact: boolean,
  metrics: FontMetrics,
): number[] {
  const natural = columns.map((column, index) => {
    const cells: Cell[] = [
      { spans: [{ text: column.title, face: 'bold' }] },
      ...rows.flatMap((row) => (row[index] ? [row[index]] : [])),
    ]
    const widths = cells.map((one) => {
      const { minPt, maxPt } = naturalWidths(one.spans, sizePt, metrics)
      const sign = one.sign
        ? naturalWidths([{ text: one.sign.text, face: 'bold' }], sizePt, metrics).maxPt + signRoomPt(sizePt)
        : 0
      return { minPt: Math.max(minPt, sign), maxPt: maxPt + sign }
    })
    const pad = 2 * CELL_PAD_X_PT + 0.5
    return {
      minPt: Math.min(Math.max(...widths.map((one) => one.minPt)), roomPt * 0.5) + pad,
      maxPt: Math.max(...widths.map((one) => one.maxPt)) + pad,
    }
  })
  const wanted = natural.reduce((sum, one) => sum + one.maxPt, 0)
  const least = natural.reduce((sum, one) => sum + one.minPt, 0)
  if (wanted <= roomPt)
    return isCompact
      ? natural.map((one) => one.maxPt)
      : natural.map((one) => one.maxPt + ((roomPt - wanted) * one.maxPt) / wanted)
  if (least >= roomPt) return natural.map((one) => (one.minPt * roomPt) / least)
  const spread = natural.reduce((sum, one) => sum + Math.sqrt(one.maxPt - one.minPt), 0)
  return sharedRoom(natural, roomPt, least, spread)
}

/** Room above the least widths goes by the square root of what each column lacks, none above its wish. */
function sharedRoom(
  natural: { minPt: number; maxPt: number }[],
  roomPt: number,
  least: number,
  spread: number,
): number[] {
  const widths = natural.map((one) =>
    Math.min(one.maxPt, one.minPt + ((roomPt - least) * Math.sqrt(one.maxPt - one.minPt)) / spread),
  )
  const over = roomPt - widths.reduce((sum, one) => sum + one, 0)
  const open = natural.map((one, index) => Math.max(0, one.maxPt - (widths[index] ?? 0)))
  const openSum = open.reduce((sum, one) => sum + one, 0)
  return widths.map(
    (width, index) => width + (openSum > 0 ? (over * (open[index] ?? 0)) / openSum : over / widths.length),
  )
}
