import type { Picture, Place, Shape } from './picture'
import { type Paint, paintOf, shadeOf } from './picture-paint'

/** One SVG element as data: a component maps it to an element with `createElement(tag, { className, ...attributes }, text)`. */
export type SvgElement = {
  tag: 'polygon' | 'polyline' | 'path' | 'circle' | 'text'
  className: string
  attributes: Record<string, string | number>
  text?: string
  mark?: string
}

/**
 * The picture's shapes as SVG elements in painting order, for a view box of `0 0 widthPx heightPx`. Attribute names are React's. Colours come
 * as presentation attributes, so a style sheet may override them by class `pic-<style>`.
 */
export function svgElementsOf(picture: Picture): SvgElement[] {
  return picture.shapes.flatMap(elementsOf)
}

function elementsOf(shape: Shape): SvgElement[] {
  if (shape.kind === 'cells') return cellElements(shape)
  const state = shape.kind === 'polygon' || shape.kind === 'polyline' ? shape.state : undefined
  const paint = paintOf(shape.style, state)
  const base = { className: `pic-${shape.style}${state ? ` pic-${state}` : ''}` }
  const mark = 'mark' in shape && shape.mark !== undefined ? { mark: shape.mark } : {}
  switch (shape.kind) {
    case 'polygon':
      return [{ tag: 'polygon', ...base, ...mark, attributes: { points: pointsOf(shape.points), ...strokeOf(paint) } }]
    case 'polyline':
      return [
        { tag: 'polyline', ...base, attributes: { points: pointsOf(shape.points), ...strokeOf(paint), fill: 'none' } },
      ]
    case 'segments':
      return [
        {
          tag: 'path',
          ...base,
          attributes: {
            d: shape.segments.map(([from, to]) => `M${from.map(round).join(' ')}L${to.map(round).join(' ')}`).join(''),
            ...strokeOf(paint),
            fill: 'none',
          },
        },
      ]
    case 'circle':
      return [
        {
          tag: 'circle',
          ...base,
          ...mark,
          attributes: { cx: round(shape.x), cy: round(shape.y), r: shape.radiusPx, ...strokeOf(paint) },
        },
      ]
    case 'text':
      return [
        {
          tag: 'text',
          ...base,
          ...mark,
          text: shape.text,
          attributes: {
            x: round(shape.x),
            y: round(shape.y),
            textAnchor: shape.anchor,
            fontSize: paint.sizePx,
            fontWeight: paint.isBold ? 700 : 400,
            fill: paint.fill ?? 'none',
          },
        },
      ]
  }
}

/** Shades that a raster is drawn in: one path for each, so that a page stays light. */
const SHADE_COUNT = 24

function cellElements(shape: Extract<Shape, { kind: 'cells' }>): SvgElement[] {
  const width = round(shape.cellWidthPx + 0.4)
  const height = round(shape.cellHeightPx + 0.4)
  const byShade = new Map<number, string>()
  shape.shares.forEach((share, index) => {
    if (share === null) return
    const shade = Math.min(SHADE_COUNT - 1, Math.floor(share * SHADE_COUNT))
    const x = round(shape.x + (index % shape.columns) * shape.cellWidthPx)
    const y = round(shape.y + Math.floor(index / shape.columns) * shape.cellHeightPx)
    byShade.set(shade, `${byShade.get(shade) ?? ''}M${x} ${y}h${width}v${height}h-${width}z`)
  })
  return [...byShade].map(([shade, d]) => ({
    tag: 'path',
    className: 'pic-cell',
    attributes: { d, fill: shadeOf((shade + 0.5) / SHADE_COUNT) },
  }))
}

function strokeOf(paint: Paint): Record<string, string | number> {
  return {
    fill: paint.fill ?? 'none',
    stroke: paint.stroke ?? 'none',
    strokeWidth: paint.strokePx,
    strokeLinejoin: 'round',
    ...(paint.dashPx.length > 0 ? { strokeDasharray: paint.dashPx.join(' ') } : {}),
  }
}

function pointsOf(points: readonly Place[]): string {
  return points.map(([x, y]) => `${round(x)},${round(y)}`).join(' ')
}

function round(value: number): number {
  return Math.round(value * 100) / 100
}
