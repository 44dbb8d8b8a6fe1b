import { Reading } from '@/lib/domain/reading'
import type { PointRecord } from '@/lib/domain/records/record'

export type RecordPath = readonly (string | number)[]

/** A reading as keyed in a record, and where in it. `value` is the very object of the record. */
export type KeyedReading = { path: RecordPath; value: Reading }

/** Members that hold no reading of the work: taps behind a reading, the chalk grid, the reference piece and the tolerance of a check. */
const LEFT_OUT: ReadonlySet<string> = new Set(['taps', 'grid', 'reference', 'tolerance'])
/** Members that hold a logger's series. */
const SERIES: ReadonlySet<string> = new Set(['series', 'ambient'])

/**
 * Every reading of a record in the order of its canonical JSON: members by name, lists as they stand. A reading is an object that has the form of one,
 * whatever its kind: a number, below or above a limit, through-wall, no access, not applicable, not inspected. A design sheet has none: it is computed.
 */
export function readingsInRecord(record: PointRecord, withSeries: boolean): KeyedReading[] {
  const found: KeyedReading[] = []
  const walk = (value: unknown, path: RecordPath): void => {
    if (Array.isArray(value)) for (const [at, one] of value.entries()) walk(one, [...path, at])
    else if (typeof value === 'object' && value !== null) {
      if ('kind' in value && Reading.safeParse(value).success) {
        found.push({ path, value: value as Reading })
        return
      }
      for (const name of Object.keys(value).sort())
        if (!LEFT_OUT.has(name) && (withSeries || !SERIES.has(name)))
          walk((value as Record<string, unknown>)[name], [...path, name])
    }
  }
  if (record.type !== 'design') walk(record, [])
  return found
}

/** The value that a path leads to; undefined when there is none. */
export function valueAt(record: unknown, path: RecordPath): unknown {
  return path.reduce<unknown>(
    (value, part) =>
      typeof value === 'object' && value !== null ? (value as Record<string | number, unknown>)[part] : undefined,
    record,
  )
}
