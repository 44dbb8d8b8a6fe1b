import type { VerdictKind } from '../judge/verdict'

/** Signs told by shape before colour. All lie in a box of 18 by 18, y downwards. */
export type GlyphName = 'pass' | 'fail' | 'not-proven' | 'in-question' | 'lapsed' | 'open' | 'later'

/** One stroke or area of a sign: SVG path data of moves, lines and arcs. `knockout` is painted in the ground's colour over the sign. */
export type GlyphPath = { d: string; paint: 'fill' | 'stroke' | 'knockout'; strokeWidth: number }

export const GLYPH_BOX = 18
const RING = 'M9 2A7 7 0 1 1 9 16A7 7 0 1 1 9 2Z'

function brokenRing(): GlyphPath[] {
  const at = (deg: number): string =>
    `${(9 + 7 * Math.cos((deg * Math.PI) / 180)).toFixed(2)} ${(9 + 7 * Math.sin((deg * Math.PI) / 180)).toFixed(2)}`
  return [0, 45, 90, 135, 180, 225, 270, 315].map((deg) => ({
    d: `M${at(deg)}A7 7 0 0 1 ${at(deg + 26)}`,
    paint: 'stroke',
    strokeWidth: 2,
  }))
}

/** Paths of each sign: disc with tick, diamond with cross, barred ring, broken ring, open clock, empty box, dot. */
export const VERDICT_GLYPHS: Record<GlyphName, readonly GlyphPath[]> = {
  pass: [
    { d: 'M9 1A8 8 0 1 1 9 17A8 8 0 1 1 9 1Z', paint: 'fill', strokeWidth: 0 },
    { d: 'M5 9.4L7.8 12.2L13 6.6', paint: 'knockout', strokeWidth: 2.2 },
  ],
  fail: [
    { d: 'M9 0L18 9L9 18L0 9Z', paint: 'fill', strokeWidth: 0 },
    { d: 'M6 6L12 12M12 6L6 12', paint: 'knockout', strokeWidth: 2.2 },
  ],
  'not-proven': [
    { d: RING, paint: 'stroke', strokeWidth: 2 },
    { d: 'M5 9L13 9', paint: 'stroke', strokeWidth: 2.4 },
  ],
  'in-question': [
    ...brokenRing(),
    { d: 'M9 4.8L9 10', paint: 'stroke', strokeWidth: 2.2 },
    { d: 'M9 11.6A1.3 1.3 0 1 1 9 14.2A1.3 1.3 0 1 1 9 11.6Z', paint: 'fill', strokeWidth: 0 },
  ],
  lapsed: [
    { d: 'M9 1.8A7.2 7.2 0 1 1 3.4 4.5', paint: 'stroke', strokeWidth: 2 },
    { d: 'M9 5L9 9.4L12 11.2', paint: 'stroke', strokeWidth: 2 },
  ],
  open: [{ d: 'M2 2L16 2L16 16L2 16Z', paint: 'stroke', strokeWidth: 2 }],
  later: [{ d: 'M9 6.8A2.2 2.2 0 1 1 9 11.2A2.2 2.2 0 1 1 9 6.8Z', paint: 'fill', strokeWidth: 0 }],
}

/** Colour of each sign, beside its shape and its word. */
export const GLYPH_COLOURS: Record<GlyphName, string> = {
  pass: '#17643a',
  fail: '#a8201a',
  'not-proven': '#7a4d00',
  'in-question': '#54368f',
  lapsed: '#4a5661',
  open: '#47525a',
  later: '#47525a',
}

/** The sign of a verdict. */
export function glyphOf(verdict: VerdictKind): GlyphName {
  return verdict === 'not proven' ? 'not-proven' : verdict
}
