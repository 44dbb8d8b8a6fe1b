import { createHash } from 'node:crypto'
import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'
import fontkit from '@pdf-lib/fontkit'

/** Size of a drawn photo, px. */
export const FRAME = { width: 1200, height: 900 } as const

/** A source of numbers in [0, 1) that is the same for the same key on every run. */
export type Chance = {
  next(): number
  between(from: number, to: number): number
  pick<T>(list: readonly [T, ...T[]]): T
}

/** Chance seeded by a photo's key. */
export function chanceOf(key: string): Chance {
  let state = createHash('sha256').update(key).digest().readUInt32LE(0)
  const next = () => {
    state = (state + 0x6d2b79f5) >>> 0
    let mixed = Math.imul(state ^ (state >>> 15), state | 1)
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296
  }
  return {
    next,
    between: (from, to) => from + (to - from) * next(),
    pick: (list) => list[Math.floor(next() * list.length)] ?? list[0],
  }
}

const folder = join(dirname(createRequire(import.meta.url).resolve('dejavu-fonts-ttf/package.json')), 'ttf')
const faces = new Map<string, ReturnType<typeof fontkit.create>>()

function face(name: string) {
  const known = faces.get(name)
  if (known) return known
  const read = fontkit.create(readFileSync(join(folder, `${name}.ttf`)))
  faces.set(name, read)
  return read
}

export type TextStyle = {
  size: number
  fill?: string
  face?: 'DejaVuSans' | 'DejaVuSans-Bold' | 'DejaVuSansMono-Bold'
  anchor?: 'start' | 'middle'
}

/** Text drawn as outlines, so that a picture does not depend on the fonts of the machine; x and y are the start of the baseline. */
export function drawText(
  text: string,
  x: number,
  y: number,
  { size, fill = '#111', face: name = 'DejaVuSans-Bold', anchor = 'start' }: TextStyle,
): string {
  const font = face(name)
  const run = font.layout(text)
  const scale = size / font.unitsPerEm
  const width = run.positions.reduce((sum, one) => sum + one.xAdvance, 0) * scale
  let pen = 0
  const outlines = run.glyphs.map((glyph, step) => {
    const at = pen
    pen += run.positions[step]?.xAdvance ?? 0
    return `<path transform="translate(${at} 0)" d="${glyph.path.toSVG()}"/>`
  })
  const start = anchor === 'middle' ? x - width / 2 : x
  return `<g fill="${fill}" transform="translate(${start.toFixed(1)} ${y.toFixed(1)}) scale(${scale.toFixed(5)} ${(-scale).toFixed(5)})">${outlines.join('')}</g>`
}

/** A rectangle. */
export function box(x: number, y: number, width: number, height: number, fill: string, extra = ''): string {
  return `<rect x="${x.toFixed(1)}" y="${y.toFixed(1)}" width="${width.toFixed(1)}" height="${height.toFixed(1)}" fill="${fill}" ${extra}/>`
}

/** A group turned about a point and moved. */
export function turned(content: string, degrees: number, x: number, y: number): string {
  return `<g transform="rotate(${degrees.toFixed(2)} ${x.toFixed(1)} ${y.toFixed(1)})">${content}</g>`
}
