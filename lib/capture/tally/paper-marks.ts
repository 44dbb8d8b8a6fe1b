import type { Unit } from '@/lib/domain/reading'
import type { Grid } from '@/lib/domain/records/common'
import type { Criterion } from '@/lib/domain/specification'
import type { FieldSpec } from '../forms/field-spec'
import { fillerShape, type MarkShape, numberedShape, stationCaption, stationShape } from '../mark-shape'

type MarksField = Extract<FieldSpec, { kind: 'marks' }>
export type PaperGround = { criteria: readonly Criterion[]; grid: Grid | null; leakClock: string | null }

/** Marks of one field on paper: tables of boxes, none wider than the sheet, each box with the mark's place in the order of taking. */
export type PaperMarks = {
  unit: Unit
  /** Null where the marks are not laid out yet: rows and columns are written in by hand. */
  tables: { columns: { name: string; caption: string }[]; rows: { name: string; boxes: PaperBox[] }[] }[] | null
}
export type PaperBox = { mark: string; no: number }

const COLUMNS_AT_MOST = 9

/** The number of marks that the specification asks of a quantity; with no such criterion, one. */
export function markCount(criteria: readonly Pick<Criterion, 'rule'>[], quantity: string): number {
  const count = criteria.find(({ rule }) => rule.kind === 'count' && rule.quantity === quantity)
  return count?.rule.kind === 'count' ? count.rule.atLeast : 1
}

/** The boxes of a field of marks: the chalk grid of point 01, the ring about the hole, or numbered marks, as many as the specification asks. */
export function paperMarks(spec: MarksField, { criteria, grid, leakClock }: PaperGround): PaperMarks {
  switch (spec.shape) {
    case 'filler':
      return { unit: spec.unit, tables: leakClock ? [fillerTable(leakClock)] : null }
    case 'numbered':
      return {
        unit: spec.unit,
        tables: [tableOf(numberedShape(spec.prefix ?? 'M', markCount(criteria, spec.quantity)), '')],
      }
    case 'stations':
      return { unit: spec.unit, tables: grid ? gridTables(grid) : null }
  }
}

/** Rows by their distance from the hole, upstream first. */
function fillerTable(leakClock: string) {
  const { columns, rows } = tableOf(fillerShape(leakClock), 'o’clock')
  return { columns, rows: rows.map(({ name, boxes }) => ({ name: `${name.replace('-', '−')} mm`, boxes })) }
}

function gridTables(grid: Grid) {
  const shape = stationShape(grid)
  const whole = tableOf(shape, '')
  const parts = Math.ceil(shape.columns.length / COLUMNS_AT_MOST)
  return Array.from({ length: parts }, (_, at) => {
    const [from, to] = [at * COLUMNS_AT_MOST, (at + 1) * COLUMNS_AT_MOST]
    return {
      columns: whole.columns.slice(from, to).map(({ name }) => ({ name, caption: `${stationCaption(grid, name)} mm` })),
      rows: whole.rows.map(({ name, boxes }) => ({ name: `${name} o’clock`, boxes: boxes.slice(from, to) })),
    }
  })
}

function tableOf({ columns, rows, marks }: MarkShape, caption: string) {
  const order = new Map(marks.flat().map((mark, at) => [mark, at + 1]))
  return {
    columns: columns.map((name) => ({ name, caption: name === '' ? '' : caption })),
    rows: marks.map((row, at) => ({
      name: rows[at] ?? '',
      boxes: row.map((mark) => ({ mark, no: order.get(mark) ?? 0 })),
    })),
  }
}
