import type { StreamId } from '@/lib/domain/facts/fact'
import type { FactOf } from '@/lib/domain/facts/fact-kinds'
import { yieldOf } from '@/lib/domain/judge/yield-of'
import { instantOf, type Moment } from '@/lib/domain/time'
import { type KeyedReading, valueAt } from './audit-readings'

/**
 * The instruments that a record names for a reading, and when it was taken. The judge's own pairing comes first; where a value is no criterion's reading, the
 * nearest part of the record that names instruments tells them.
 */
export function instrumentsBehind(
  fact: FactOf<'recorded'>,
  { path, value }: KeyedReading,
): { instruments: StreamId[]; at: Moment } {
  const { record } = fact.body
  const yielded = yieldOf(record, fact.observedAt, fact.observedBy).readings.filter((one) => one.reading === value)
  const at = yielded[0]?.at ?? nearestMoment(record, path) ?? fact.observedAt
  const paired = [...new Set(yielded.flatMap((one) => (one.instrument ? [one.instrument] : [])))]
  if (paired.length > 0) return { instruments: paired, at }
  for (let length = path.length - 1; length >= 0; length -= 1) {
    const around = valueAt(record, path.slice(0, length))
    if (typeof around !== 'object' || around === null) continue
    const named = Object.values(around)
      .flat()
      .filter((one): one is StreamId => typeof one === 'string' && one.startsWith('instrument:'))
    if (named.length > 0) return { instruments: [...new Set(named)], at }
  }
  return { instruments: [], at }
}

/** The earliest moment in the part of the record that stands nearest round the reading and has one: the time of its own line, else when the whole was taken. */
function nearestMoment(record: unknown, path: KeyedReading['path']): Moment | null {
  for (let length = path.length - 1; length >= 0; length -= 1) {
    const around = valueAt(record, path.slice(0, length))
    if (typeof around !== 'object' || around === null || Array.isArray(around)) continue
    const moments = Object.entries(around).flatMap(([name, value]) =>
      (name === 'at' || name.endsWith('At')) && typeof value === 'string' && !Number.isNaN(Date.parse(value))
        ? [value]
        : [],
    )
    const first = moments.sort((a, b) => instantOf(a) - instantOf(b))[0]
    if (first) return first
  }
  return null
}
