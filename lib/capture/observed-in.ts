import { instantOf, Moment } from '@/lib/domain/time'
import type { FormSpec } from './forms/field-spec'

/**
 * When a record was observed, from the record's own time: the end of a watch once it ended, the last reading of a test, otherwise the field that
 * its form names.
 * @returns null when the record has no time of its own: it is observed when it is entered
 */
export function observedIn(spec: FormSpec, values: Record<string, unknown>): Moment | null {
  const named = spec.observed ? momentIn(values[spec.observed]) : null
  const ended = momentIn(values.endedAt)
  if (spec.type === 'arrest-watch') return ended ?? momentIn(values.dripSeenAt) ?? named
  if (spec.type === 'pressure-test' && Array.isArray(values.readings)) {
    const times = values.readings.flatMap((one: unknown) =>
      one !== null && typeof one === 'object' && 'at' in one ? (momentIn(one.at) ?? []) : [],
    )
    return times.sort((a, b) => instantOf(b) - instantOf(a))[0] ?? null
  }
  if (spec.type === 'arrest' && values.arrest !== null && typeof values.arrest === 'object') {
    const arrest = values.arrest as Record<string, unknown>
    return momentIn(arrest.judgedHardAt) ?? momentIn(arrest.bandTightAt) ?? momentIn(arrest.placedAt)
  }
  return named
}

function momentIn(value: unknown): Moment | null {
  const parsed = Moment.safeParse(value)
  return parsed.success ? parsed.data : null
}
