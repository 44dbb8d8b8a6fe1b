import { GLYPH_COLOURS } from '@/lib/domain/pictures/verdict-glyphs'
import type { Tone } from '../blocks'

/** Colours of the printed sheet, hex. Signs keep their colours; words beside them repeat them. */
export const INK: Record<Tone | 'rule' | 'head' | 'sheet' | 'ground', string> = {
  ink: '#14181b',
  soft: '#47525a',
  rule: '#c9cdc9',
  head: '#f3f3ef',
  sheet: '#ffffff',
  ground: '#eceeeb',
  pass: GLYPH_COLOURS.pass,
  fail: GLYPH_COLOURS.fail,
  'not-proven': GLYPH_COLOURS['not-proven'],
  'in-question': GLYPH_COLOURS['in-question'],
  lapsed: GLYPH_COLOURS.lapsed,
}
