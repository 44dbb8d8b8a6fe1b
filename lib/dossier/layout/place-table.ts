import type { Block, Cell } from '../blocks'
import { CELL_PAD_X_PT, columnWidths, signRoomPt } from './column-widths'
import { leadPt, type Pen } from './pen'
import { BODY_WIDTH_PT, SHEET } from './sheet'
import { partOf, type StructureNode } from './structure'
import type { Line } from './text-lines'
import { toneOf } from './tone-of'

type TableBlock = Extract<Block, { kind: 'table' }>
type LaidCell = { cell: Cell; lines: Line[]; isAbsent: boolean }
type Table = { x: number; widths: number[]; sizePt: number; columns: TableBlock['columns'] }

const PAD_Y_PT = 2.6
const SMALL_ROWS = 9
const SMALL_PT = 170
export const TABLE_SIZE_PT = 8

/** What must stay together with the heading before a table: all of a small one, the head and first row of a larger one. */
export function tableStartPt(block: TableBlock, pen: Pen): number {
  const table = tableOf(block, pen)
  const headPt = block.isHeadless ? 0 : heightOf(headRow(table, pen), table.sizePt)
  const heights = (block.rows.length > SMALL_ROWS ? block.rows.slice(0, 1) : block.rows).map((row) =>
    heightOf(laid(row, table, pen), table.sizePt),
  )
  const wholePt = headPt + heights.reduce((sum, one) => sum + one, 0)
  return wholePt <= SMALL_PT ? wholePt : headPt + Math.min(heights[0] ?? 0, 200)
}

/** Place a table; it breaks between rows and repeats its head on each sheet. A row taller than a sheet breaks between its lines. */
export function placeTable(block: TableBlock, pen: Pen): void {
  if (block.rows.length === 0) return
  const table = tableOf(block, pen)
  const top = block.isHeadless ? null : headRow(table, pen)
  const headPt = top ? heightOf(top, table.sizePt) : 0
  pen.ensure(tableStartPt(block, pen))
  pen.as('Table', () => {
    if (top) placeRow(top, table, pen, rowElements(top, 'Column', pen))
    for (const row of block.rows) {
      const cells = laid(row, table, pen)
      const elements = rowElements(cells, 'Row', pen)
      for (const part of partsOf(cells, table.sizePt, SHEET.body.bottom - SHEET.body.top - headPt)) {
        if (pen.leftPt < heightOf(part, table.sizePt) && !pen.isAtTop) {
          pen.nextSheet()
          if (top) placeRow(top, table, pen, [])
        }
        placeRow(part, table, pen, elements)
      }
    }
  })
  pen.y += 7
}

/** Elements of a row's cells, in their row; a head that is repeated on the next sheet has none. */
function rowElements(row: readonly LaidCell[], scope: 'Column' | 'Row', pen: Pen): (StructureNode | null)[] {
  const tr = pen.newElement('TR')
  return row.map(({ cell }) => tr && (cell.isHead ? partOf(tr, 'TH', { scope }) : partOf(tr, 'TD')))
}

function tableOf(block: TableBlock, pen: Pen): Table {
  return pen.once(block, () => measuredTable(block, pen))
}

function measuredTable(block: TableBlock, pen: Pen): Table {
  const sizePt = block.sizePt ?? TABLE_SIZE_PT
  return {
    x: SHEET.body.left,
    sizePt,
    columns: block.columns,
    widths: columnWidths(block.columns, block.rows, BODY_WIDTH_PT, sizePt, block.isCompact ?? false, pen.metrics),
  }
}

function headRow(table: Table, pen: Pen): LaidCell[] {
  return laid(
    table.columns.map(
      (column): Cell => ({
        spans: [{ text: column.title, face: 'bold', tone: 'soft' }],
        isHead: true,
        ...(column.align ? { align: column.align } : {}),
      }),
    ),
    table,
    pen,
  )
}

function laid(row: readonly Cell[], table: Table, pen: Pen): LaidCell[] {
  return pen.once(row, () => measuredRow(row, table, pen))
}

function measuredRow(row: readonly Cell[], table: Table, pen: Pen): LaidCell[] {
  return table.widths.map((width, index) => {
    const given = row[index]
    const cell = given ?? { spans: [] }
    const room = width - 2 * CELL_PAD_X_PT - (cell.sign ? signRoomPt(table.sizePt) : 0)
    const spans = cell.sign
      ? [
          { text: cell.sign.text, face: 'bold' as const },
          ...(cell.spans.length > 0 ? [{ text: ' ' }, ...cell.spans] : []),
        ]
      : cell.spans
    return { cell, lines: pen.lines(spans, room, table.sizePt), isAbsent: given === undefined }
  })
}

function heightOf(row: readonly LaidCell[], sizePt: number): number {
  return Math.max(1, ...row.map((one) => one.lines.length)) * leadPt(sizePt) + 2 * PAD_Y_PT
}

function partsOf(row: LaidCell[], sizePt: number, roomPt: number): LaidCell[][] {
  const most = Math.floor((roomPt - 2 * PAD_Y_PT) / leadPt(sizePt))
  const count = Math.max(1, ...row.map((one) => Math.ceil(one.lines.length / most)))
  return Array.from({ length: count }, (_, at) =>
    row.map((one) => ({ ...one, lines: one.lines.slice(at * most, at * most + most) })),
  )
}

function placeRow(row: readonly LaidCell[], table: Table, pen: Pen, elements: readonly (StructureNode | null)[]): void {
  const { sizePt } = table
  const heightPt = heightOf(row, sizePt)
  let x = table.x
  for (const [index, { cell, lines, isAbsent }] of row.entries()) {
    const width = table.widths[index] ?? 0
    if (!isAbsent)
      pen.add({ kind: 'box', x, y: pen.y, widthPt: width, heightPt, fill: cell.isHead ? 'head' : null, edge: 'rule' })
    const align = cell.align ?? table.columns[index]?.align ?? 'left'
    const room = cell.sign ? signRoomPt(sizePt) : 0
    if (cell.sign)
      pen.add({
        kind: 'sign',
        x: x + CELL_PAD_X_PT,
        y: pen.y + PAD_Y_PT + 0.4,
        sizePt: sizePt + 1.6,
        glyph: cell.sign.glyph,
      })
    const left = x + CELL_PAD_X_PT + room
    pen.into(elements[index] ?? null, () => {
      for (const [at, line] of lines.entries()) {
        const free = width - 2 * CELL_PAD_X_PT - room - line.widthPt
        const shift = align === 'right' ? free : align === 'centre' ? free / 2 : 0
        const tone = cell.sign && at === 0 ? toneOf(cell.sign.glyph) : undefined
        pen.line(line, left + shift, pen.y + PAD_Y_PT + at * leadPt(sizePt), sizePt, tone)
      }
    })
    x += width
  }
  pen.y += heightPt
}
