import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { installedFile } from '../installed-file'
import type { Face, FontMetrics } from '../layout/font-metrics'
import { type FontFile, readFontFile } from './safe-fontkit'

// What the machine holds is found when it runs: the build must not trace it, hence the marks below.
const FILES: Record<Face, string> = {
  regular: 'DejaVuSansCondensed.ttf',
  bold: 'DejaVuSansCondensed-Bold.ttf',
  mono: 'DejaVuSansMono.ttf',
}

export type Faces = { files: Record<Face, FontFile>; metrics: FontMetrics }

let loaded: Promise<Faces> | null = null

/**
 * The dossier's typefaces from the installed font package, found from the working folder upwards; read once in a process.
 * @throws Error when the package is not installed there
 */
export function loadFaces(): Promise<Faces> {
  loaded ??= readFaces().catch((error: unknown) => {
    loaded = null
    throw error
  })
  return loaded
}

async function readFaces(): Promise<Faces> {
  const folder = installedFile('node_modules', 'dejavu-fonts-ttf', 'ttf')
  const load = async (face: Face): Promise<FontFile> =>
    readFontFile(await readFile(/*turbopackIgnore: true*/ join(/*turbopackIgnore: true*/ folder, FILES[face])))
  const files = { regular: await load('regular'), bold: await load('bold'), mono: await load('mono') }
  return { files, metrics: metricsOf(files) }
}

function metricsOf(files: Record<Face, FontFile>): FontMetrics {
  const faces = { regular: measureOf(files.regular), bold: measureOf(files.bold), mono: measureOf(files.mono) }
  return {
    hasGlyph: (codePoint, face) => faces[face](codePoint) !== null,
    widthPt(text, face, sizePt) {
      const widthOf = faces[face]
      let sum = 0
      for (let at = 0; at < text.length; at += 1) {
        const codePoint = text.codePointAt(at) ?? 0
        if (codePoint > 0xffff) at += 1
        sum += widthOf(codePoint) ?? 0
      }
      return sum * sizePt
    },
  }
}

/** Width of one character in shares of the size, looked up in the font once; null where the face has no glyph. */
function measureOf(font: FontFile): (codePoint: number) => number | null {
  const known = new Map<number, number | null>()
  return (codePoint) => {
    const width = known.get(codePoint)
    if (width !== undefined) return width
    const looked = font.hasGlyphForCodePoint(codePoint)
      ? font.glyphForCodePoint(codePoint).advanceWidth / font.unitsPerEm
      : null
    known.set(codePoint, looked)
    return looked
  }
}
