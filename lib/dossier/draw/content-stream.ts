import type { Place } from '@/lib/domain/pictures/picture'

/** Stroke and fill of one path: hex colours or null, width and dashes in points. */
export type PathPaint = { fill: string | null; stroke: string | null; widthPt: number; dashPt?: readonly number[] }

const CURVE = 0.5523

/** Writes one page's drawing operators. Coordinates come in points from the top left, y downwards, and are turned here. */
export class ContentStream {
  private readonly operators: string[] = []

  constructor(private readonly pageHeightPt: number) {}

  text(x: number, y: number, hex: string, font: string, sizePt: number, colour: string): void {
    if (hex !== '')
      this.operators.push(`BT ${fillOf(colour)} /${font} ${n(sizePt)} Tf 1 0 0 1 ${this.at(x, y)} Tm <${hex}> Tj ET`)
  }

  line(x1: number, y1: number, x2: number, y2: number, widthPt: number, colour: string): void {
    this.operators.push(`${strokeOf(colour, widthPt)} ${this.at(x1, y1)} m ${this.at(x2, y2)} l S`)
  }

  box(x: number, y: number, widthPt: number, heightPt: number, paint: PathPaint): void {
    this.paint(`${this.at(x, y + heightPt)} ${n(widthPt)} ${n(heightPt)} re`, paint)
  }

  path(points: readonly Place[], isClosed: boolean, paint: PathPaint): void {
    const [first, ...rest] = points
    if (first)
      this.paint(
        `${this.at(...first)} m ${rest.map((point) => `${this.at(...point)} l`).join(' ')}${isClosed ? ' h' : ''}`,
        paint,
      )
  }

  segments(segments: readonly (readonly [Place, Place])[], paint: PathPaint): void {
    this.paint(segments.map(([from, to]) => `${this.at(...from)} m ${this.at(...to)} l`).join(' '), paint)
  }

  circle(x: number, y: number, r: number, paint: PathPaint): void {
    const k = r * CURVE
    const curve = (a: Place, b: Place, c: Place): string => `${this.at(...a)} ${this.at(...b)} ${this.at(...c)} c`
    this.paint(
      `${this.at(x + r, y)} m ${curve([x + r, y + k], [x + k, y + r], [x, y + r])} ${curve([x - k, y + r], [x - r, y + k], [x - r, y])} ${curve([x - r, y - k], [x - k, y - r], [x, y - r])} ${curve([x + k, y - r], [x + r, y - k], [x + r, y])} h`,
      paint,
    )
  }

  image(name: string, x: number, y: number, widthPt: number, heightPt: number): void {
    this.operators.push(`q ${n(widthPt)} 0 0 ${n(heightPt)} ${this.at(x, y + heightPt)} cm /${name} Do Q`)
  }

  /** Squares of one side, each named by column and row, filled as one shape. */
  squares(x: number, y: number, sidePt: number, places: readonly Place[], colour: string): void {
    if (places.length === 0) return
    const boxes = places.map(
      ([column, row]) => `${this.at(x + column * sidePt, y + (row + 1) * sidePt)} ${n(sidePt)} ${n(sidePt)} re`,
    )
    this.operators.push(`${fillOf(colour)} ${boxes.join(' ')} f`)
  }

  /** What follows belongs to an element of the structure, under its number on this page; to none when `mark` is null. */
  open(mark: { type: string; number: number } | null): void {
    this.operators.push(mark ? `/${mark.type} <</MCID ${mark.number}>> BDC` : '/Artifact BMC')
  }

  close(): void {
    this.operators.push('EMC')
  }

  toString(): string {
    return this.operators.join('\n')
  }

  private paint(path: string, { fill, stroke, widthPt, dashPt }: PathPaint): void {
    if (path === '' || (fill === null && stroke === null)) return
    const dash = dashPt && dashPt.length > 0 ? [`[${dashPt.map(n).join(' ')}] 0 d`, '[] 0 d'] : ['', '']
    const operator = fill && stroke ? 'B' : fill ? 'f' : 'S'
    this.operators.push(
      [fill ? fillOf(fill) : '', stroke ? strokeOf(stroke, widthPt) : '', dash[0], path, operator, dash[1]]
        .filter(Boolean)
        .join(' '),
    )
  }

  private at(x: number, y: number): string {
    return `${n(x)} ${n(this.pageHeightPt - y)}`
  }
}

function fillOf(hex: string): string {
  return `${parts(hex)} rg`
}

function strokeOf(hex: string, widthPt: number): string {
  return `${n(widthPt)} w ${parts(hex)} RG`
}

const COLOURS = new Map<string, string>()

function parts(hex: string): string {
  const known = COLOURS.get(hex)
  if (known !== undefined) return known
  const made = [1, 3, 5].map((at) => n(Number.parseInt(hex.slice(at, at + 2), 16) / 255)).join(' ')
  COLOURS.set(hex, made)
  return made
}

/** A number as the format takes it: no exponent, at most three decimals. */
function n(value: number): string {
  return String(Math.round(value * 1000) / 1000)
}
