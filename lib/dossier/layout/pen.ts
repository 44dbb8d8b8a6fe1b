import type { Span, Tone } from '../blocks'
import type { FontMetrics } from './font-metrics'
import type { Placed } from './placed'
import { SHEET } from './sheet'
import { partOf, type StructureNode, type StructureType } from './structure'
import { breakLines, type Line } from './text-lines'

/** Places things downwards on sheets and starts a new sheet when the next thing does not fit. */
export class Pen {
  readonly sheets: Placed[][] = [[]]
  y: number = SHEET.body.top
  /** Measures of tables and rows that were taken already, by the block or row itself. */
  readonly measured = new WeakMap<object, unknown>()
  readonly structure: StructureNode = { type: 'Document', parts: [] }
  /** Element that words and pictures belong to; null for what a reader who hears the sheet is spared. */
  private element: StructureNode | null
  /** How deep the last heading of a section or point was: the next one below goes one deeper. */
  headingDepth = 1

  /** @param isSpoken false for what only frames the sheet */
  constructor(
    readonly metrics: FontMetrics,
    isSpoken = true,
  ) {
    this.element = isSpoken ? this.structure : null
  }

  /** What `measure` gives for a block or row, taken once. */
  once<T>(of: object, measure: () => T): T {
    if (!this.measured.has(of)) this.measured.set(of, measure())
    return this.measured.get(of) as T
  }

  get leftPt(): number {
    return SHEET.body.bottom - this.y
  }
  get isAtTop(): boolean {
    return this.y <= SHEET.body.top + 0.01
  }
  get sheetNo(): number {
    return this.sheets.length
  }

  /** Put things on the sheet. Each is new: it is told here which element it belongs to. */
  add(...items: Placed[]): void {
    const { element } = this
    if (element) for (const one of items) if (isSpoken(one)) one.tag = element
    this.sheets.at(-1)?.push(...items)
  }

  /** What `place` puts down belongs to a new element of the structure, under the present one. */
  as(type: StructureType, place: () => void, more: Parameters<typeof partOf>[2] = {}): void {
    this.into(this.element && partOf(this.element, type, more), place)
  }

  /** What `place` puts down belongs to this element; to none when it is null. */
  into(element: StructureNode | null, place: () => void): void {
    const around = this.element
    this.element = element
    place()
    this.element = around
  }

  /** A new element under the present one; null where nothing is spoken. */
  newElement(type: StructureType, more: Parameters<typeof partOf>[2] = {}): StructureNode | null {
    return this.element && partOf(this.element, type, more)
  }

  nextSheet(): void {
    this.sheets.push([])
    this.y = SHEET.body.top
  }

  /** A new sheet when less than `heightPt` is left, unless this one is still empty. */
  ensure(heightPt: number): void {
    if (this.leftPt < heightPt && !this.isAtTop) this.nextSheet()
  }

  lines(spans: readonly Span[], widthPt: number, sizePt: number): Line[] {
    return breakLines(spans, widthPt, sizePt, this.metrics)
  }

  /** Place one line with its top at `yTop`, shifted by `x`. A struck run is crossed through, its text kept. */
  line(line: Line, x: number, yTop: number, sizePt: number, tone?: Tone): void {
    const baseline = yTop + sizePt * 1.02
    for (const run of line.runs) {
      this.add({
        kind: 'text',
        x: x + run.x,
        y: baseline,
        text: run.text,
        face: run.face,
        sizePt,
        tone: tone ?? run.tone,
      })
      if (run.isStruck)
        this.add({
          kind: 'line',
          x1: x + run.x,
          y1: baseline - sizePt * 0.3,
          x2: x + run.x + run.widthPt,
          y2: baseline - sizePt * 0.3,
          widthPt: 0.9,
          tone: 'fail',
        })
    }
  }
}

function isSpoken({ kind }: Placed): boolean {
  return kind === 'text' || kind === 'picture' || kind === 'photo' || kind === 'squares'
}

/** Distance from line to line at a size. */
export function leadPt(sizePt: number): number {
  return sizePt * 1.36
}
