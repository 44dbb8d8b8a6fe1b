import { existsSync } from 'node:fs'
import { readFile } from 'node:fs/promises'
import { dirname, join } from 'node:path'
import type { Face, FontMetrics } from '../layout/font-metrics'
import { type FontFile, readFontFile } from './safe-fontkit'

const FILES: Record<Face, string> = { regular: 'DejaVuSansCondensed.ttf', bold: 'DejaVuSansCondensed-Bold.ttf', mono: 'DejaVuSansMono.ttf' }

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
  const folder = fontFolder(process.cwd())
  const load = async (face: Face): Promise<FontFile> => readFontFile(await readFile(join(folder, FILES[face])))
  const files = { regular: await load('regular'), bold: await load('bold'), mono: await load('mono') }
  return { files, metrics: metricsOf(files) }
}

function fontFolder(from: string): string {
  for (let folder = from; ; folder = dirname(folder)) {
    const candidate = join(folder, 'node_modules', 'dejavu-fonts-ttf', 'ttf')
    if (existsSync(candidate)) return candidate
    if (folder === dirname(folder)) throw new Error(`The typefaces of the dossier are not installed: no node_modules/dejavu-fonts-ttf from ${from} upwards`)
  }
}

function metricsOf(files: Record<Face, FontFile>): FontMetrics {
  const widths: Record<Face, Map<number, number>> = { regular: new Map(), bold: new Map(), mono: new Map() }
  return {
    hasGlyph: (codePoint, face) => files[face].hasGlyphForCodePoint(codePoint),
    widthPt(text, face, sizePt) {
      let sum = 0
      const known = widths[face]
      for (const character of text) {
        const codePoint = character.codePointAt(0) ?? 0
        let width = known.get(codePoint)
        if (width === undefined) {
          width = files[face].glyphForCodePoint(codePoint).advanceWidth / files[face].unitsPerEm
          known.set(codePoint, width)
        }
        sum += width
      }
      return sum * sizePt
    },
  }
}
