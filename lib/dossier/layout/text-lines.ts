import type { Span, Tone } from '../blocks'
import { type Face, type FontMetrics, legible } from './font-metrics'

export type Run = { text: string; face: Face; tone: Tone; isStruck: boolean; x: number; widthPt: number }
export type Line = { runs: Run[]; widthPt: number }

type Word = { text: string; span: Span; face: Face; widthPt: number }

/**
 * Break spans into lines no wider than `widthPt`. Breaks at spaces; a word wider than the line (a digest) breaks between characters. A newline
 * in the text starts a line. Empty spans give one empty line.
 */
export function breakLines(spans: readonly Span[], widthPt: number, sizePt: number, metrics: FontMetrics): Line[] {
  const whole = wholeLine(spans, widthPt, sizePt, metrics)
  if (whole) return [whole]
  const lines: Line[] = []
  let line: Line = { runs: [], widthPt: 0 }
  const close = (): void => {
    lines.push(trimmed(line, sizePt, metrics))
    line = { runs: [], widthPt: 0 }
  }
  for (const span of spans) {
    for (const [index, part] of span.text.split('\n').entries()) {
      if (index > 0) close()
      for (const word of wordsOf(part, span, sizePt, metrics)) {
        if (line.widthPt + word.widthPt > widthPt + 0.01 && line.runs.length > 0 && word.text.trim() !== '') close()
        if (line.runs.length === 0 && word.text.trim() === '') continue
        for (const piece of word.widthPt > widthPt ? piecesOf(word, widthPt, sizePt, metrics) : [word]) {
          if (line.widthPt + piece.widthPt > widthPt + 0.01 && line.runs.length > 0 && piece.text.trim() !== '') close()
          add(line, piece)
        }
      }
    }
  }
  close()
  return lines
}

/** One span that fits its line as it is, as most cells do: no words are told apart. Null for anything else. */
function wholeLine(spans: readonly Span[], widthPt: number, sizePt: number, metrics: FontMetrics): Line | null {
  const [span, ...others] = spans
  if (!span || others.length > 0 || span.text.trim() !== span.text || span.text === '' || span.text.includes('\n'))
    return null
  const face = span.face ?? 'regular'
  const text = legible(span.text, face, metrics)
  const width = metrics.widthPt(text, face, sizePt)
  if (width > widthPt) return null
  const run: Run = {
    text,
    face,
    tone: span.tone ?? 'ink',
    isStruck: span.isStruck ?? false,
    x: 0,
    widthPt: width,
  }
  return { runs: [run], widthPt: width }
}

/** Width of the widest unbreakable word and of the longest line that spans would need. */
export function naturalWidths(
  spans: readonly Span[],
  sizePt: number,
  metrics: FontMetrics,
): { minPt: number; maxPt: number } {
  let [minPt, maxPt, line] = [0, 0, 0]
  for (const span of spans) {
    for (const [index, part] of span.text.split('\n').entries()) {
      if (index > 0) line = 0
      for (const word of wordsOf(part, span, sizePt, metrics)) {
        line += word.widthPt
        maxPt = Math.max(maxPt, line)
        if (word.text.trim() !== '') minPt = Math.max(minPt, word.widthPt)
      }
    }
  }
  return { minPt, maxPt }
}

function wordsOf(text: string, span: Span, sizePt: number, metrics: FontMetrics): Word[] {
  const face = span.face ?? 'regular'
  return (legible(text, face, metrics).match(/ +|[^ ]+/g) ?? []).map((word) => ({
    text: word,
    span,
    face,
    widthPt: metrics.widthPt(word, face, sizePt),
  }))
}

function piecesOf(word: Word, widthPt: number, sizePt: number, metrics: FontMetrics): Word[] {
  const pieces: Word[] = []
  let [text, reached] = ['', 0]
  for (const character of word.text) {
    const step = metrics.widthPt(character, word.face, sizePt)
    if (text !== '' && reached + step > widthPt) {
      pieces.push({ ...word, text, widthPt: reached })
      text = ''
      reached = 0
    }
    text += character
    reached += step
  }
  return [...pieces, { ...word, text, widthPt: reached }]
}

function add(line: Line, word: Word): void {
  const last = line.runs.at(-1)
  const tone = word.span.tone ?? 'ink'
  const isStruck = word.span.isStruck ?? false
  if (last && last.face === word.face && last.tone === tone && last.isStruck === isStruck) {
    last.text += word.text
    last.widthPt += word.widthPt
  } else line.runs.push({ text: word.text, face: word.face, tone, isStruck, x: line.widthPt, widthPt: word.widthPt })
  line.widthPt += word.widthPt
}

function trimmed(line: Line, sizePt: number, metrics: FontMetrics): Line {
  const last = line.runs.at(-1)
  if (!last?.text.endsWith(' ')) return line
  const text = last.text.trimEnd()
  const shorter = metrics.widthPt(last.text, last.face, sizePt) - metrics.widthPt(text, last.face, sizePt)
  return {
    runs: [...line.runs.slice(0, -1), { ...last, text, widthPt: last.widthPt - shorter }],
    widthPt: line.widthPt - shorter,
  }
}
