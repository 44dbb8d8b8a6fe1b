import { showDecimal } from '../decimal'
import { withMetric } from '../metric-beside'
import { Reading, showReadingUnit } from '../reading'
import { showMoment } from '../time'
import type { MarkedReading } from './common'
import { fieldLabel, PERSON_FIELDS } from './field-labels'

const MOMENT = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}/
const STREAM = /^(batch|instrument|person|repair|specification|plan|nonconformance|project):/

/** How persons and streams are named where a value is shown. */
export type Names = { personName: (person: string) => string; streamTitle: (stream: string) => string }

/** The reading that a value of a record is; null for anything else. */
export function readingOf(value: unknown): Reading | null {
  const parsed = typeof value === 'object' && value !== null && 'kind' in value ? Reading.safeParse(value) : null
  return parsed?.success ? parsed.data : null
}

/** A reading with its unit, and its metric figure beside another unit; as keyed too where the digits alone do not tell it, and the reason of one that does not apply. */
export function showKept(reading: Reading): string {
  if (reading.kind === 'not-applicable') return `n/a: ${reading.reason}`
  if (reading.kind === 'not-inspected') return 'not inspected'
  if (!('text' in reading)) return showReadingUnit(reading)
  const shown = withMetric(showReadingUnit(reading), reading)
  const keyed = reading.text.replace(/^[<>]\s*/, '').replace('−', '-')
  return keyed === showDecimal(reading) ? shown : `${shown} (keyed ${reading.text})`
}

/** Whether a value is a list of readings at marks. */
export function isMarkedReadings(value: unknown): value is MarkedReading[] {
  return (
    Array.isArray(value) &&
    value.length > 0 &&
    value.every(
      (one) =>
        typeof one === 'object' && one !== null && 'mark' in one && 'reading' in one && readingOf(one.reading) !== null,
    )
  )
}

/** Any value of a record in words: readings with units, times with their offset, streams and persons by name. */
export function showValue(field: string, value: unknown, names: Names): string {
  const reading = readingOf(value)
  if (reading) return showKept(reading)
  if (typeof value === 'string')
    return MOMENT.test(value)
      ? showMoment(value)
      : STREAM.test(value)
        ? names.streamTitle(value)
        : PERSON_FIELDS.has(field)
          ? names.personName(value)
          : value
  if (typeof value === 'number' || typeof value === 'boolean') return String(value)
  if (Array.isArray(value)) return value.map((one) => showValue(field, one, names)).join('; ')
  if (value === null || typeof value !== 'object') return 'none'
  const entries = Object.entries(value)
  if (
    entries.length === 2 &&
    'digits' in value &&
    'scale' in value &&
    typeof value.digits === 'number' &&
    typeof value.scale === 'number'
  )
    return showDecimal({ digits: value.digits, scale: value.scale })
  return entries
    .map(([key, one]) =>
      ['batch', 'amount', 'reading'].includes(key)
        ? showValue(key, one, names)
        : `${fieldLabel(key).toLowerCase()} ${showValue(key, one, names)}`,
    )
    .join(', ')
}
