import type { LabelContent } from '@/lib/domain/labels/label-content'
import type { DrawnSymbol } from './label-drawing'
import { type LabelSize, LINE_HEIGHT, labelLayout } from './label-size'

/** One label as it is printed: the symbol, its text for people, the lines and the standing words. */
export function LabelFace({ content, symbol, size }: { content: LabelContent; symbol: DrawnSymbol; size: LabelSize }) {
  const lines = [
    { text: content.title, scale: 1.5, weight: 720 },
    ...content.lines.map((text) => ({ text, scale: 1, weight: 500 })),
    { text: content.human, scale: 0.9, weight: 500 },
    { text: content.standing, scale: 0.72, weight: 400 },
  ]
  const { padMm, symbolMm, typeMm } = labelLayout(size, lines)
  return (
    <figure
      className="label-face"
      style={{ width: `${size.widthMm}mm`, height: `${size.heightMm}mm`, padding: `${padMm}mm`, gap: `${padMm}mm` }}
    >
      <svg
        role="img"
        aria-label={`Code of ${content.title}: ${content.human}`}
        viewBox={`0 0 ${symbol.widthModules} ${symbol.heightModules}`}
        style={{ width: `${symbolMm}mm`, height: `${symbolMm}mm` }}
        shapeRendering="crispEdges"
      >
        <path d={symbol.path} fill="#000" />
      </svg>
      <figcaption>
        {lines.map(({ text, scale, weight }) => (
          <p key={text} style={{ fontSize: `${typeMm * scale}mm`, fontWeight: weight, lineHeight: LINE_HEIGHT }}>
            {/* A field of GS1 stays whole on its line while it can. */}
            {text.split(/(?=\(\d{2,4}\))/).map((part) => (
              <span key={part} className="gs1-part">
                {part}
              </span>
            ))}
          </p>
        ))}
      </figcaption>
    </figure>
  )
}
