import type { FieldSpec } from '@/lib/capture/forms/field-spec'
import { FORMS } from '@/lib/capture/forms/form-table'
import type { PersonId } from '@/lib/domain/facts/fact'
import { readingFigures } from '@/lib/domain/judge/reading-figures'
import { metricBeside, withMetric } from '@/lib/domain/metric-beside'
import { Measured, Reading, showReading, showReadingUnit, showUnit, UNITS } from '@/lib/domain/reading'
import { MarkedReadings } from '@/lib/domain/records/common'
import type { PointRecord } from '@/lib/domain/records/record'
import { Moment, showMoment } from '@/lib/domain/time'

type Line = { label: string; value: string }

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
          <dd>{line.value}</dd>
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
    if (field.kind === 'list' && Array.isArray(value))
      return value.map((one: unknown, place) => ({
        label: `${field.each} ${place + 1}`,
        value: linesOf(field.of, field.of[0]?.name === '' ? { '': one } : (one as Record<string, unknown>), names)
          .map((line) => (field.of.length === 1 ? line.value : `${line.label.toLowerCase()} ${line.value}`))
          .join('; '),
      }))
    if (field.kind === 'marks')
      return [{ label: field.label, value: `${shown(value, names)}${figuresOf(field.quantity, value)}` }]
    return [{ label: field.label, value: shown(value, names) }]
  })
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
