import { deflateSync } from 'node:zlib'
import { type PDFContext, PDFHexString, PDFName, type PDFRef, PDFString } from 'pdf-lib'
import type { FontFile, FontSubset } from './safe-fontkit'

/**
 * One typeface of a document: collects the glyphs that are used and writes them once at the end. Text is laid glyph by glyph,
 * without ligatures or kerning, so that widths are sums and every character reads back as it was.
 */
export class FaceEmbedding {
  private readonly subset: FontSubset
  private readonly hexByCodePoint = new Map<number, string>()
  private readonly used: { subsetId: number; codePoint: number; width: number }[] = []

  constructor(
    private readonly font: FontFile,
    private readonly tag: string,
  ) {
    this.subset = font.createSubset()
  }

  /** The text as hexadecimal glyph codes of this face. @throws RangeError for a character the face lacks: layout replaces those */
  encode(text: string): string {
    let hex = ''
    for (const character of text) hex += this.hexOf(character)
    return hex
  }

  private hexOf(character: string): string {
    const codePoint = character.codePointAt(0) ?? 0
    const known = this.hexByCodePoint.get(codePoint)
    if (known !== undefined) return known
    if (!this.font.hasGlyphForCodePoint(codePoint))
      throw new RangeError(`The face has no glyph for U+${codePoint.toString(16)}`)
    const glyph = this.font.glyphForCodePoint(codePoint)
    const subsetId = this.subset.includeGlyph(glyph.id)
    const hex = subsetId.toString(16).padStart(4, '0')
    if (!this.used.some((one) => one.subsetId === subsetId))
      this.used.push({ subsetId, codePoint, width: (glyph.advanceWidth * 1000) / this.font.unitsPerEm })
    this.hexByCodePoint.set(codePoint, hex)
    return hex
  }

  /** Write the face with the glyphs used so far under `ref`. @param listsGlyphs also say which glyphs the subset holds, as PDF/A-1 demands */
  async embed(context: PDFContext, ref: PDFRef, listsGlyphs: boolean): Promise<void> {
    const { font } = this
    const name = `${this.tag}+${font.postscriptName}`
    const scale = 1000 / font.unitsPerEm
    const bytes = await collect(this.subset.encodeStream())
    const glyphs = [...this.used].sort((a, b) => a.subsetId - b.subsetId)
    const file = context.register(context.stream(deflateSync(bytes), { Filter: 'FlateDecode', Length1: bytes.length }))
    const descriptor = context.register(
      context.obj({
        Type: 'FontDescriptor',
        FontName: name,
        Flags: 4,
        FontBBox: [font.bbox.minX * scale, font.bbox.minY * scale, font.bbox.maxX * scale, font.bbox.maxY * scale].map(
          Math.round,
        ),
        ItalicAngle: 0,
        Ascent: Math.round(font.ascent * scale),
        Descent: Math.round(font.descent * scale),
        CapHeight: Math.round(font.ascent * scale * 0.79),
        StemV: 80,
        FontFile2: file,
        ...(listsGlyphs ? { CIDSet: context.register(context.flateStream(allOf(this.subset.glyphs.length))) } : {}),
      }),
    )
    const descendant = context.register(
      context.obj({
        Type: 'Font',
        Subtype: 'CIDFontType2',
        BaseFont: name,
        CIDToGIDMap: 'Identity',
        FontDescriptor: descriptor,
        CIDSystemInfo: { Registry: PDFString.of('Adobe'), Ordering: PDFString.of('Identity'), Supplement: 0 },
        W: glyphs.flatMap((one) => [one.subsetId, [Math.round(one.width * 100) / 100]]),
      }),
    )
    const toUnicode = context.register(context.stream(deflateSync(toUnicodeMap(glyphs)), { Filter: 'FlateDecode' }))
    context.assign(
      ref,
      context.obj({
        Type: PDFName.of('Font'),
        Subtype: 'Type0',
        BaseFont: name,
        Encoding: 'Identity-H',
        DescendantFonts: [descendant],
        ToUnicode: toUnicode,
      }),
    )
  }
}

/** A bit for each of the first `count` glyphs. */
function allOf(count: number): Uint8Array {
  const bytes = new Uint8Array(Math.ceil(count / 8)).fill(0xff)
  if (count % 8 > 0) bytes[bytes.length - 1] = (0xff << (8 - (count % 8))) & 0xff
  return bytes
}

function toUnicodeMap(glyphs: readonly { subsetId: number; codePoint: number }[]): string {
  const lines = glyphs.map(
    (one) =>
      `<${one.subsetId.toString(16).padStart(4, '0')}> <${PDFHexString.fromText(String.fromCodePoint(one.codePoint)).asString().replace(/^FEFF/i, '')}>`,
  )
  const parts = Array.from({ length: Math.ceil(lines.length / 100) }, (_, at) => lines.slice(at * 100, at * 100 + 100))
  return [
    '/CIDInit /ProcSet findresource begin',
    '12 dict begin',
    'begincmap',
    '/CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def',
    '/CMapName /Adobe-Identity-UCS def',
    '/CMapType 2 def',
    '1 begincodespacerange',
    '<0000> <ffff>',
    'endcodespacerange',
    ...parts.flatMap((part) => [`${part.length} beginbfchar`, ...part, 'endbfchar']),
    'endcmap',
    'CMapName currentdict /CMap defineresource pop',
    'end',
    'end',
  ].join('\n')
}

function collect(stream: NodeJS.EventEmitter): Promise<Buffer> {
  return new Promise((resolve, reject) => {
    const parts: Uint8Array[] = []
    stream.on('data', (part: Uint8Array) => parts.push(part))
    stream.on('end', () => resolve(Buffer.concat(parts)))
    stream.on('error', reject)
  })
}
