/**
 * The body that keyed values make: what was left empty is absent, and so is a group with nothing in it. A list keeps its length but drops empty items.
 * Nothing is filled in.
 */
export function bodyOfValues(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(bodyOfValues).filter((one) => one !== undefined)
  if (value === null || typeof value !== 'object') return value === '' ? undefined : value
  const kept = Object.entries(value).flatMap(([key, one]) => {
    const inner = bodyOfValues(one)
    return inner === undefined ? [] : [[key, inner] as const]
  })
  return kept.length === 0 ? undefined : Object.fromEntries(kept)
}
