/** Sides of a label in mm. */
export type LabelSize = { widthMm: number; heightMm: number }

/** Sizes that label rolls come in; none is taken without being asked for. */
export const SIZES_TO_CHOOSE = [
  ['50', '25'],
  ['70', '37'],
  ['100', '50'],
  ['105', '74'],
] as const

/** The size as keyed, each side from 20 to 300 mm with at most one decimal; null while it is not complete. */
export function labelSizeOf(width: string, height: string): LabelSize | null {
  const [widthMm, heightMm] = [sideOf(width), sideOf(height)]
  return widthMm === null || heightMm === null ? null : { widthMm, heightMm }
}

function sideOf(text: string): number | null {
  if (!/^\d{2,3}(?:\.\d)?$/.test(text.trim())) return null
  const mm = Number(text)
  return mm >= 20 && mm <= 300 ? mm : null
}

/** Where things lie on a label, mm: the symbol is a square on the left, text beside it; type shrinks until its lines fit. */
export function labelLayout(
  { widthMm, heightMm }: LabelSize,
  lines: readonly { text: string; scale: number }[],
): { padMm: number; symbolMm: number; typeMm: number } {
  const padMm = Math.max(1.5, Math.min(widthMm, heightMm) * 0.05)
  const symbolMm = Math.min(heightMm - 2 * padMm, (widthMm - 3 * padMm) * 0.42)
  const textWidthMm = widthMm - 3 * padMm - symbolMm
  let typeMm = heightMm / 6
  for (; typeMm > 0.8; typeMm *= 0.97) {
    const used = lines.reduce(
      (sum, line) => sum + rowsOf(line.text, typeMm * line.scale, textWidthMm) * typeMm * line.scale,
      0,
    )
    if (used * LINE_HEIGHT <= heightMm - 2 * padMm) break
  }
  return { padMm, symbolMm, typeMm }
}

/** Height of a line of type against its size. */
export const LINE_HEIGHT = 1.22
/** Width of a sign against its size: wide enough for capitals and figures. */
const SIGN_WIDTH = 0.58

function rowsOf(text: string, typeMm: number, widthMm: number): number {
  const signs = Math.max(1, Math.floor(widthMm / (typeMm * SIGN_WIDTH)))
  let [rows, used] = [1, 0]
  for (const word of text.split(' ')) {
    if (used > 0 && used + 1 + word.length > signs) [rows, used] = [rows + 1, 0]
    rows += Math.floor(Math.max(0, word.length - 1) / signs)
    used += (used > 0 ? 1 : 0) + Math.min(word.length, signs)
  }
  return rows
}
