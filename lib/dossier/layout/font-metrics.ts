export type Face = 'regular' | 'bold' | 'mono'

/** How wide text is and what can be drawn; layout knows fonts only through this. */
export type FontMetrics = {
  /** Width in points of text set in a face at a size. */
  widthPt(text: string, face: Face, sizePt: number): number
  hasGlyph(codePoint: number, face: Face): boolean
}

/**
 * The text as it can be drawn: composed form, every blank a space, and each character that a face lacks written out as `[U+1F600]`, never left out.
 */
export function legible(text: string, face: Face, metrics: FontMetrics): string {
  if (/^[\x20-\x7e]*$/.test(text)) return text
  let out = ''
  for (const character of text.normalize('NFC')) {
    const codePoint = character.codePointAt(0) ?? 0
    if (/\s/u.test(character)) out += ' '
    else if (codePoint >= 0x20 && metrics.hasGlyph(codePoint, face)) out += character
    else out += `[U+${codePoint.toString(16).toUpperCase().padStart(4, '0')}]`
  }
  return out
}
