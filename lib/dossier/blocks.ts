import type { Picture } from '@/lib/domain/pictures/picture'
import type { GlyphName } from '@/lib/domain/pictures/verdict-glyphs'
import type { Face } from './layout/font-metrics'

export type Tone = 'ink' | 'soft' | 'pass' | 'fail' | 'not-proven' | 'in-question' | 'lapsed'

/** A run of text in one face. Struck text is an old value that was superseded: still readable. */
export type Span = { text: string; face?: Face; tone?: Tone; isStruck?: boolean }
/** A verdict or state: its sign and its word. */
export type Sign = { glyph: GlyphName; text: string }
export type Cell = { spans: readonly Span[]; sign?: Sign; align?: 'left' | 'right' | 'centre'; isHead?: boolean }
export type Column = { title: string; align?: 'left' | 'right' | 'centre' }
export type PhotoCell = {
  rendition: { sha256: string; widthPx: number; heightPx: number }
  isReadable: boolean
  lines: readonly (readonly Span[])[]
}

/** What a section is made of, in reading order. Layout alone decides places and pages. */
export type Block =
  | { kind: 'cover'; organisation: string; title: string; place: string; sign: Sign; lead: string }
  | { kind: 'section'; no: string; text: string }
  | { kind: 'title'; eyebrow: string; text: string; sign: Sign | null; state: string | null }
  | { kind: 'heading'; text: string; isMinor?: boolean }
  | { kind: 'paragraph'; spans: readonly Span[]; sizePt?: number }
  | {
      kind: 'table'
      columns: readonly Column[]
      rows: readonly (readonly Cell[])[]
      isCompact?: boolean
      isHeadless?: boolean
      sizePt?: number
    }
  | { kind: 'picture'; picture: Picture; title: string; maxHeightPt?: number }
  | { kind: 'photos'; photos: readonly PhotoCell[]; perRow: 1 | 2 | 3; pictureHeightPt: number }
  /** What a stranger checks the file by: a code as rows of squares with what it leads to, and words beside it. */
  | {
      kind: 'seal'
      code: readonly (readonly boolean[])[]
      codeAlt: string
      lines: readonly (readonly Span[])[]
    }
  /** A fresh sheet when less than this share of the sheet is left. */
  | { kind: 'break'; unlessLeft: number }

export type Section = { no: string; title: string; isNotApplicable?: string; blocks: readonly Block[] }

/** Text in the plain face. */
export function plain(text: string, tone?: Tone): Span {
  return tone ? { text, tone } : { text }
}
/** Text in the bold face. */
export function strong(text: string, tone?: Tone): Span {
  return tone ? { text, face: 'bold', tone } : { text, face: 'bold' }
}
/** Digests and arithmetic. */
export function mono(text: string, tone?: Tone): Span {
  return tone ? { text, face: 'mono', tone } : { text, face: 'mono' }
}
/** A cell of plain text. */
export function cell(text: string, tone?: Tone): Cell {
  return { spans: [plain(text, tone)] }
}
/** A cell that names its row. */
export function head(text: string): Cell {
  return { spans: [strong(text, 'soft')], isHead: true }
}
/** A paragraph of plain text. */
export function paragraph(text: string, tone?: Tone): Block {
  return { kind: 'paragraph', spans: [plain(text, tone)] }
}
/** A table of named values, two columns of names. */
export function pairs(rows: readonly (readonly [string, Cell | string])[]): Block {
  const cells = rows.map(([name, value]) => [head(name), typeof value === 'string' ? cell(value) : value] as const)
  return { kind: 'table', isHeadless: true, columns: [{ title: '' }, { title: '' }], rows: cells }
}
/** Named values, two to a row. */
export function singleLine(values: readonly (readonly [string, string])[]): Block {
  const cells = values.map(([name, value]): Cell[] => [head(name), cell(value)])
  const rows = Array.from({ length: Math.ceil(cells.length / 2) }, (_, at) => [
    ...(cells[2 * at] ?? []),
    ...(cells[2 * at + 1] ?? []),
  ])
  return {
    kind: 'table',
    isHeadless: true,
    columns: Array.from({ length: Math.min(4, cells.length * 2) }, () => ({ title: '' })),
    rows,
    sizePt: 7.6,
  }
}
