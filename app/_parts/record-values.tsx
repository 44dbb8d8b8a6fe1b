import * as z from 'zod'
import type { FieldSpec } from '@/lib/capture/forms/field-spec'
import { FORMS } from '@/lib/capture/forms/form-table'
import { compareDecimals } from '@/lib/domain/decimal'
import type { PersonId } from '@/lib/domain/facts/fact'
import { readingFigures } from '@/lib/domain/judge/reading-figures'
import { metricBeside, withMetric } from '@/lib/domain/metric-beside'
import { Measured, Reading, showReading, showReadingUnit, showUnit, UNITS } from '@/lib/domain/reading'
import { MarkedReadings } from '@/lib/domain/records/common'
import type { PointRecord } from '@/lib/domain/records/record'
import { Moment, showMoment } from '@/lib/domain/time'

/** `more`: a long series in full, folded below its span. */
type Line = { label: string; value: string; more?: string }

/** Every value of a record with its label, as keyed, in the order of its form. */
export function RecordValues({ record, names }: { record: PointRecord; names: Record<PersonId, string> }) {
  const lines = linesOf(FORMS[record.type].fields, record as unknown as Record<string, unknown>, names)
  return (
    <dl className="pairs">
      {lines.map((line, place) => (
        // Labels repeat in lists; the place in the form is what tells lines apart.
        // biome-ignore lint/suspicious/noArrayIndexKey: see above
        <div key={place} style={{ display: 'contents' }}>
          <dt>{line.label}</dt>
          <dd>
            {line.value}
            {line.more ? (
              <details>
                <summary className="quiet small">all of them</summary>
                <span className="small">{line.more}</span>
              </details>
            ) : null}
          </dd>
        </div>
      ))}
    </dl>
  )
}

function linesOf(
  fields: readonly FieldSpec[],
  values: Record<string, unknown>,
  names: Record<PersonId, string>,
): Line[] {
  return fields.flatMap((field): Line[] => {
    const value = field.name === '' ? values[''] : values[field.name]
    if (value === undefined || value === null) return []
    if (field.kind === 'group')
      return linesOf(field.of, value as Record<string, unknown>, names).map((line) => ({
        ...line,
        label: `${field.label} ${line.label.charAt(0).toLowerCase()}${line.label.slice(1)}`,
      }))
    if (field.kind === 'variant') {
      const inner = value as Record<string, unknown>
      const chosen = field.variants.find((variant) => variant.value === inner[field.by])
      return [
        { label: field.label, value: String(inner[field.by]) },
        ...(chosen ? linesOf(chosen.of, inner, names) : []),
      ]
    }
    if (field.kind === 'list' && Array.isArray(value)) {
      const series = seriesLine(field.label, value)
      if (series) return [series]
      return value.flatMap((one: unknown, place): Line[] => {
        const inner = linesOf(
          field.of,
          field.of[0]?.name === '' ? { '': one } : (one as Record<string, unknown>),
          names,
        )
        const label = `${field.each} ${place + 1}`
        return [
          {
            label,
            value: inner
              .filter((line) => line.more === undefined)
              .map((line) => (field.of.length === 1 ? line.value : `${line.label.toLowerCase()} ${line.value}`))
              .join('; '),
          },
          ...inner
            .filter((line) => line.more !== undefined)
            .map((line) => ({ ...line, label: `${label}, ${line.label.toLowerCase()}` })),
        ]
      })
    }
    if (field.kind === 'marks')
      return [{ label: field.label, value: `${shown(value, names)}${figuresOf(field.quantity, value)}` }]
    return [{ label: field.label, value: shown(value, names) }]
  })
}

const SHORT_SERIES = 6

/** A long list of times with a reading each: its span, lowest and highest, the whole of it folded. Null for any other list. */
function seriesLine(label: string, value: readonly unknown[]): Line | null {
  const parsed = z
    .array(z.strictObject({ at: Moment, reading: Measured }))
    .min(SHORT_SERIES + 1)
    .safeParse(value)
  if (!parsed.success) return null
  const points = parsed.data
  const [first, last] = [points[0], points.at(-1)]
  if (!first || !last) return null
  const sorted = [...points].sort((a, b) => compareDecimals(a.reading, b.reading))
  const show = (reading: Measured): string => withMetric(showReadingUnit(reading), reading)
  const [low, high] = [sorted[0] ?? first, sorted.at(-1) ?? last]
  return {
    label,
    value: `${points.length} from ${showMoment(first.at)} to ${showMoment(last.at)}, lowest ${show(low.reading)}, highest ${show(high.reading)}`,
    more: points.map((one) => `${one.at.slice(5, 16).replace('T', ' ')} ${show(one.reading)}`).join('; '),
  }
}

function shown(value: unknown, names: Record<PersonId, string>): string {
  const marks = MarkedReadings.safeParse(value)
  if (marks.success && marks.data.length > 0) {
    const units = new Set(marks.data.flatMap(({ reading }) => ('unit' in reading ? [reading.unit] : [])))
    const [unit] = units
    const isMetric = marks.data.every(({ reading }) => metricBeside(reading) === null)
    return units.size <= 1 && isMetric
      ? `${marks.data.map((one) => `${one.mark} ${showReading(one.reading)}`).join('; ')}${unit ? ` ${showUnit(unit)}` : ''}`
      : marks.data.map((one) => `${one.mark} ${withMetric(showReadingUnit(one.reading), one.reading)}`).join('; ')
  }
  if (Array.isArray(value)) return value.length === 0 ? 'none' : value.map((one) => shown(one, names)).join('; ')
  const reading =
    Measured.safeParse(value).success || Reading.safeParse(value).success ? Reading.safeParse(value) : null
  if (reading?.success)
    return reading.data.kind === 'not-applicable'
      ? `not applicable: ${reading.data.reason}`
      : withMetric(showReadingUnit(reading.data), reading.data)
  if (typeof value === 'string') {
    if (Moment.safeParse(value).success) return showMoment(value)
    if (/^(batch|instrument|person):/.test(value)) return value.slice(value.indexOf(':') + 1)
    const unit = UNITS.find((one) => one === value)
    return names[value as PersonId] ?? (unit ? showUnit(unit) : value)
  }
  if (typeof value === 'object' && value !== null && 'stations' in value && 'clocks' in value) {
    const grid = value as { stations: { name: string; fromLeak: Reading }[]; clocks: string[] }
    return `${grid.stations.map((one) => `${one.name} ${showReading(one.fromLeak)}`).join(', ')} mm; clock ${grid.clocks.join(', ')}`
  }
  return String(value)
}

function figuresOf(quantity: string, value: unknown): string {
  const marks = MarkedReadings.safeParse(value)
  const figures = marks.success ? readingFigures(quantity, marks.data) : null
  return figures ? ` (${figures})` : ''
}
