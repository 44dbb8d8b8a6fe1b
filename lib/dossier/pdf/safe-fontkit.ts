import fontkit from '@pdf-lib/fontkit'

/** What is used of a font file: widths, glyphs and a subset of its outlines. Lengths are in the font's own units. */
export type FontFile = {
  postscriptName: string
  unitsPerEm: number
  ascent: number
  descent: number
  bbox: { minX: number; minY: number; maxX: number; maxY: number }
  hasGlyphForCodePoint(codePoint: number): boolean
  glyphForCodePoint(codePoint: number): { id: number; advanceWidth: number }
  createSubset(): FontSubset
}

export type FontSubset = {
  includeGlyph(glyphId: number): number
  encodeStream(): NodeJS.EventEmitter
  /** Glyphs of the font in the order of the subset, with those that others are composed of once it is encoded. */
  glyphs: readonly number[]
}

type PatchedSubset = FontSubset & { _addGlyph(glyphId: number): unknown; loca: { version: number } }

/**
 * Read a static TrueType font for subsetting. Subsets are written with long glyph offsets: the short form that the library picks for
 * small subsets loses glyphs of odd length, on screen only.
 * @throws RangeError for web fonts, fonts with cubic outlines and variable fonts: the library would fail later, outside any catch
 */
export function readFontFile(bytes: Uint8Array): FontFile {
  const tag = Buffer.from(bytes.buffer, bytes.byteOffset, 4).toString('latin1')
  if (tag !== '\x00\x01\x00\x00' && tag !== 'true')
    throw new RangeError(`Expected a static TrueType font, received ${JSON.stringify(tag)}`)
  const font = fontkit.create(bytes) as unknown as FontFile & { variationAxes?: object }
  if (font.variationAxes && Object.keys(font.variationAxes).length > 0)
    throw new RangeError('Expected a static TrueType font, received a variable one')
  const createSubset = font.createSubset.bind(font)
  font.createSubset = () => {
    const subset = createSubset() as PatchedSubset
    const addGlyph = subset._addGlyph
    subset._addGlyph = function (this: PatchedSubset, glyphId) {
      this.loca.version = 1
      return addGlyph.call(this, glyphId)
    }
    return subset
  }
  return font
}
