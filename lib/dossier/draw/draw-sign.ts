import type { Place } from '@/lib/domain/pictures/picture'
import { GLYPH_BOX, GLYPH_COLOURS, type GlyphName, VERDICT_GLYPHS } from '@/lib/domain/pictures/verdict-glyphs'
import type { ContentStream } from './content-stream'
import { INK } from './ink'

/** Draw a verdict's sign in a square of `sizePt` with its top left at x, y. Arcs of its path data are drawn as short straight pieces. */
export function drawSign(glyph: GlyphName, x: number, y: number, sizePt: number, stream: ContentStream): void {
  const scale = sizePt / GLYPH_BOX
  for (const path of VERDICT_GLYPHS[glyph]) {
    for (const { points, isClosed } of piecesOf(path.d)) {
      const placed = points.map(([px, py]): Place => [x + px * scale, y + py * scale])
      const colour = path.paint === 'knockout' ? INK.sheet : GLYPH_COLOURS[glyph]
      stream.path(
        placed,
        isClosed,
        path.paint === 'fill'
          ? { fill: colour, stroke: null, widthPt: 0 }
          : { fill: null, stroke: colour, widthPt: path.strokeWidth * scale },
      )
    }
  }
}

type Piece = { points: Place[]; isClosed: boolean }

function piecesOf(d: string): Piece[] {
  const pieces: Piece[] = []
  for (const [, command, rest = ''] of d.matchAll(/([MLAZ])([^MLAZ]*)/g)) {
    const numbers = rest
      .trim()
      .split(/[\s,]+/)
      .filter(Boolean)
      .map(Number)
    const piece = pieces.at(-1)
    if (command === 'M') pieces.push({ points: [[numbers[0] ?? 0, numbers[1] ?? 0]], isClosed: false })
    else if (command === 'Z' && piece) piece.isClosed = true
    else if (command === 'L') piece?.points.push([numbers[0] ?? 0, numbers[1] ?? 0])
    else if (command === 'A' && piece) piece.points.push(...arcPoints(piece.points.at(-1) ?? [0, 0], numbers))
  }
  return pieces
}

/** Points along a circular arc given as in SVG: radius, flags and end. Only circles occur in the signs. */
function arcPoints([x1, y1]: Place, numbers: readonly number[]): Place[] {
  const [r = 0, , , isLarge = 0, isSweep = 0, x2 = 0, y2 = 0] = numbers
  const [dx, dy] = [x2 - x1, y2 - y1]
  const chord = Math.hypot(dx, dy)
  const reach = Math.sqrt(Math.max(0, r * r - (chord * chord) / 4)) * (isLarge === isSweep ? -1 : 1)
  const [cx, cy] = [(x1 + x2) / 2 - (reach * dy) / chord, (y1 + y2) / 2 + (reach * dx) / chord]
  const start = Math.atan2(y1 - cy, x1 - cx)
  let sweep = Math.atan2(y2 - cy, x2 - cx) - start
  if (isSweep === 1 && sweep < 0) sweep += 2 * Math.PI
  if (isSweep === 0 && sweep > 0) sweep -= 2 * Math.PI
  const steps = Math.max(2, Math.ceil(Math.abs(sweep) / 0.16))
  return Array.from(
    { length: steps },
    (_, at): Place => [
      cx + r * Math.cos(start + (sweep * (at + 1)) / steps),
      cy + r * Math.sin(start + (sweep * (at + 1)) / steps),
    ],
  )
}
