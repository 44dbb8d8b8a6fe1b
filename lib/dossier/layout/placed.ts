import type { Picture } from '@/lib/domain/pictures/picture'
import type { GlyphName } from '@/lib/domain/pictures/verdict-glyphs'
import type { Tone } from '../blocks'
import type { Face } from './font-metrics'
import type { StructureNode } from './structure'

/** One thing placed on a sheet: points from the top left, y downwards; text stands on its baseline. What has no tag is decoration to a reader who hears the sheet. */
export type Placed = { tag?: StructureNode } & PlacedShape

type PlacedShape =
  | { kind: 'text'; x: number; y: number; text: string; face: Face; sizePt: number; tone: Tone }
  | { kind: 'line'; x1: number; y1: number; x2: number; y2: number; widthPt: number; tone: Tone | 'rule' }
  | {
      kind: 'box'
      x: number
      y: number
      widthPt: number
      heightPt: number
      fill: 'head' | 'sheet' | 'ground' | null
      edge: 'rule' | 'ink' | null
    }
  | { kind: 'sign'; x: number; y: number; sizePt: number; glyph: GlyphName }
  | { kind: 'picture'; x: number; y: number; scale: number; picture: Picture }
  | { kind: 'squares'; x: number; y: number; sidePt: number; rows: readonly (readonly boolean[])[] }
  | { kind: 'photo'; x: number; y: number; widthPt: number; heightPt: number; sha256: string }

export type PlacedSheet = { items: readonly Placed[] }
/** A laid-out dossier: sheets, and the sheet on which each section starts, counted from 1. */
export type LaidOut = {
  /** Elements of the document in reading order. */
  structure: readonly StructureNode[]
  sheets: readonly PlacedSheet[]
  sectionSheets: readonly { no: string; title: string; sheetNo: number }[]
}
