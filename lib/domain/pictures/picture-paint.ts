import type { LayerState, StyleName } from './picture'

/** Colours in hex; widths, dashes and letter sizes in the picture's pixels. Null paints nothing. */
export type Paint = {
  fill: string | null
  stroke: string | null
  strokePx: number
  dashPx: readonly number[]
  sizePx: number
  isBold: boolean
}

const INK = '#14181b'
const INK_2 = '#47525a'
const PASS = '#17643a'
const FAIL = '#a8201a'
const NOT_PROVEN = '#7a4d00'
const SHEET = '#ffffff'

function area(fill: string, stroke: string, strokePx = 1.3): Paint {
  return { fill, stroke, strokePx, dashPx: [], sizePx: 0, isBold: false }
}
function line(stroke: string, strokePx: number): Paint {
  return { fill: null, stroke, strokePx, dashPx: [], sizePx: 0, isBold: false }
}
function dashed(stroke: string, strokePx: number, dashPx: readonly number[]): Paint {
  return { ...line(stroke, strokePx), dashPx }
}
function letters(fill: string, sizePx: number, isBold: boolean): Paint {
  return { fill, stroke: null, strokePx: 0, dashPx: [], sizePx, isBold }
}

const PAINTS: Record<StyleName, Paint> = {
  steel: area('#aeb7bc', '#5d686f'),
  plug: area('#b58b3b', '#6b4e14'),
  plate: area('#6d7a82', '#333d43'),
  filler: area('#c9b48a', '#7a683f'),
  wrap: area('#a9c4c7', '#2f6066'),
  surface: line('#0a4c5a', 2.6),
  ply: line('#2f6066', 0.7),
  'ply-outer': line('#2f6066', 1.9),
  hatch: line('#7b868c', 0.8),
  dimension: line(INK_2, 1),
  leader: line(INK, 0.9),
  dot: area(INK, INK, 0),
  axis: line('#c9cdc9', 0.8),
  ground: area('#eceeeb', '#c9cdc9', 0.8),
  frame: line(INK_2, 1),
  'mark-pass': area(SHEET, PASS, 2),
  'mark-fail': area(FAIL, FAIL, 1),
  'mark-not-proven': area('#fbf1dd', NOT_PROVEN, 2),
  'mark-plain': area(SHEET, INK_2, 1.4),
  callout: letters(INK, 13, true),
  note: letters(INK_2, 11.5, false),
  figure: letters(INK_2, 11.5, true),
  value: letters(INK, 12, true),
  'value-fail': letters(SHEET, 12, true),
  'value-not-proven': letters(NOT_PROVEN, 12, true),
  series: line(INK_2, 1.3),
  'series-coldest': line('#0a4c5a', 3),
  'series-second': dashed(INK, 1.6, [2, 3]),
  'series-ambient': dashed(INK_2, 1.3, [7, 3, 2, 3]),
  'limit-line': dashed(FAIL, 1.6, [9, 4]),
  'moment-line': line(PASS, 2),
  'break-area': area('#f6e3e1', FAIL, 0.8),
  label: letters(INK, 11.5, true),
  zone: line(INK, 2.6),
  step: line('#5d686f', 0.9),
}

/** The paint of a style. An open or fallen layer is drawn pale, a fallen one with a dashed edge as well. */
export function paintOf(style: StyleName, state: LayerState = 'released'): Paint {
  const paint = PAINTS[style]
  if (state === 'released') return paint
  return { ...paint, fill: paint.fill && paler(paint.fill), dashPx: state === 'broken' ? [6, 4] : [] }
}

/** Shading of a share from 0 (lowest, dark) to 1 (highest, pale): one hue, so that it reads in grey as well. */
export function shadeOf(share: number): string {
  const low = [126, 164, 168] as const
  const high = [253, 253, 252] as const
  return `#${low
    .map((from, index) =>
      Math.round(from + ((high[index] ?? from) - from) * Math.min(1, Math.max(0, share)))
        .toString(16)
        .padStart(2, '0'),
    )
    .join('')}`
}

function paler(hex: string): string {
  const parts = [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16))
  return `#${parts
    .map((part) =>
      Math.round(part + (255 - part) * 0.62)
        .toString(16)
        .padStart(2, '0'),
    )
    .join('')}`
}
