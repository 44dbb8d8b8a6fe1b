import type { BodyOf } from '../facts/fact-kinds'
import { Reading, showReadingUnit } from '../reading'

type Change = BodyOf<'corrected'>['changes'][number]

/** One change of a correction in words: the mark where the path leads to a marked reading, else the field; old and new value as they are shown. */
export function showChange(change: Change, record: object | null): string {
  return `${showPath(change.path, record)} from ${showValue(change.from)} to ${showValue(change.to)}`
}

function showPath(path: Change['path'], record: object | null): string {
  let value: unknown = record
  for (const part of path) {
    value =
      value !== null && typeof value === 'object' && Object.hasOwn(value, part)
        ? (value as Record<string | number, unknown>)[part]
        : undefined
    if (value !== null && typeof value === 'object' && 'mark' in value && typeof value.mark === 'string')
      return value.mark
  }
  return path.join('.')
}

function showValue(value: unknown): string {
  const reading = Reading.safeParse(value)
  if (reading.success) return showReadingUnit(reading.data)
  if (value === null) return 'nothing'
  return typeof value === 'string' ? value : JSON.stringify(value)
}
