import type { GlyphName } from '@/lib/domain/pictures/verdict-glyphs'
import type { Tone } from '../blocks'

/** Tone of a sign's word. */
export function toneOf(glyph: GlyphName): Tone {
  return glyph === 'open' || glyph === 'later' ? 'soft' : glyph
}
