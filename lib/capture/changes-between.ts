type Json = string | number | boolean | null | Json[] | { [key: string]: Json }
export type Change = { path: (string | number)[]; from: Json; to: Json }

/**
 * The changed places from one record to another, as deep as both have the same shape, for a correction. A reading is one value: it changes as a
 * whole, with its digits, unit and text. A place that is absent is null.
 */
export function changesBetween(was: unknown, is: unknown): Change[] {
  return compare(plain(was), plain(is), [])
}

function compare(was: Json, is: Json, path: (string | number)[]): Change[] {
  if (JSON.stringify(was) === JSON.stringify(is)) return []
  if (Array.isArray(was) && Array.isArray(is) && was.length === is.length)
    return was.flatMap((one, place) => compare(one, is[place] ?? null, [...path, place]))
  if (isPlainObject(was) && isPlainObject(is) && !isReading(was) && !isReading(is)) {
    const keys = [...new Set([...Object.keys(was), ...Object.keys(is)])].sort()
    return keys.flatMap((key) => compare(was[key] ?? null, is[key] ?? null, [...path, key]))
  }
  return [{ path, from: was, to: is }]
}

function plain(value: unknown): Json {
  return value === undefined ? null : (JSON.parse(JSON.stringify(value)) as Json)
}

function isPlainObject(value: Json): value is { [key: string]: Json } {
  return value !== null && typeof value === 'object' && !Array.isArray(value)
}

function isReading(value: { [key: string]: Json }): boolean {
  return (
    typeof value.kind === 'string' &&
    ('digits' in value || ['through-wall', 'no-access', 'not-inspected', 'not-applicable'].includes(value.kind))
  )
}
