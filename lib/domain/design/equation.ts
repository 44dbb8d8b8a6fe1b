import type { FigureKey } from './design-figure'
import type { DesignFigures } from './design-figures'
import { refusalWords } from './refusal-words'

export type Confidence = 'high' | 'medium' | 'low'

/** One equation of the design sheet: in symbols, with its numbers put in, and its results, or in words why there are none. */
export type Equation = {
  id: string
  title: string
  formula: string
  put: string | null
  uses: readonly FigureKey[]
  results: readonly { symbol: string; text: string }[]
  refusal: string | null
  source: string
  confidence: Confidence
  /** What the engineer must settle before relying on it: present where the form is not certain. */
  settle: string | null
  notes: readonly string[]
}

export type Draft = {
  id: string
  title: string
  /** The form with figures in braces, a line to each part, such as `t = ({pressure}·{diameter}/2)/{hoopModulus}`; other names in braces come from `derived`. */
  form: string
  derived?: Readonly<Record<string, { symbol: string; text: string }>>
  source: string
  confidence: Confidence
  settle?: string
  notes?: readonly string[]
}

/** A computed figure as printed, with so many places; from ten thousand on the thousands stand apart, by a space that does not break. */
export function showComputed(value: number, places: number): string {
  const text = value.toFixed(places)
  const [whole = '', part] = text.split('.')
  const spaced = whole.length > 4 ? whole.replace(/\B(?=(\d{3})+$)/g, '\u00a0') : whole
  return part ? `${spaced}.${part}` : spaced
}

/** An equation with its figures put in. @param answer the results, or the refusal's code */
export function equationOf(
  draft: Draft,
  figures: DesignFigures,
  answer: { results: Equation['results'] } | { refused: string },
): Equation {
  const uses = [...draft.form.matchAll(/\{([a-zA-Z0-9]+)\}/g)].flatMap(([, name]) =>
    name !== undefined && isFigure(name, figures) ? [name] : [],
  )
  const fill = (put: boolean): string | null => {
    let isWhole = true
    const text = draft.form.replace(/\{([a-zA-Z0-9]+)\}/g, (_, name: string) => {
      const derived = draft.derived?.[name]
      if (derived) return put ? derived.text : derived.symbol
      if (!isFigure(name, figures)) return name
      const figure = figures[name]
      if (!put) return figure.symbol
      if (figure.value === null) isWhole = false
      return figure.value === null ? '?' : numberText(figure.value)
    })
    return isWhole ? text : null
  }
  return {
    id: draft.id,
    title: draft.title,
    formula: fill(false) ?? draft.form,
    put: 'refused' in answer ? null : fill(true),
    uses: [...new Set(uses)],
    results: 'refused' in answer ? [] : answer.results,
    refusal: 'refused' in answer ? refusalWords(answer.refused) : null,
    source: draft.source,
    confidence: draft.confidence,
    settle: draft.settle ?? null,
    notes: draft.notes ?? [],
  }
}

function isFigure(name: string, figures: DesignFigures): name is FigureKey {
  return Object.hasOwn(figures, name)
}

/** An input as put into an equation: all its digits, without the noise of binary fractions. */
export function numberText(value: number): string {
  const text = String(Number(value.toPrecision(9)))
  return /^\d{5,}$/.test(text) ? showComputed(value, 0) : text
}
