import { isRefused, type Refusal } from '@/lib/calc/refusal'
import type { DesignFigures } from './design-figures'
import { type Equation, equationOf, showComputed } from './equation'

/** The two parts of a mixed mass by the ratio of the specification. `mass` is the symbol and figure (g) of the mix, null where it is refused; `ratio` names the figure of part B to 100 of part A. */
export function partsEquation(
  {
    id,
    title,
    symbol,
    massG,
    ratio,
  }: { id: string; title: string; symbol: string; massG: number | null; ratio: string },
  figures: DesignFigures,
  parts: { partAG: number; partBG: number } | Refusal,
): Equation {
  return equationOf(
    {
      id,
      title,
      form: `A = {${symbol}}·100/(100 + {${ratio}});\nB = {${symbol}}·{${ratio}}/(100 + {${ratio}})`,
      derived: { [symbol]: { symbol, text: massG === null ? '?' : showComputed(massG, 0) } },
      source: 'The ratio by mass is the specification’s',
      confidence: 'high',
    },
    figures,
    isRefused(parts)
      ? parts
      : {
          results: [
            { symbol: 'A', text: `${showComputed(parts.partAG, 0)} g` },
            { symbol: 'B', text: `${showComputed(parts.partBG, 0)} g` },
          ],
        },
  )
}
