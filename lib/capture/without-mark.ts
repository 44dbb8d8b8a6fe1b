type Fields = Record<string, unknown>

/** A mark that is being typed: `path` of its list in the form, parts parted by dots. It is kept with every key and judged once it is left. */
export type TypedMark = { path: string; mark: string }

/** The values of a form without what is being typed at a mark; they themselves where nothing is. */
export function withoutMark(values: Fields, typed: TypedMark | null): Fields {
  return typed === null ? values : (leaveOut(values, typed.path.split('.'), typed.mark) as Fields)
}

function leaveOut(value: unknown, [part, ...rest]: readonly string[], mark: string): unknown {
  if (part === undefined) return Array.isArray(value) ? value.filter((one) => markOf(one) !== mark) : value
  if (Array.isArray(value)) return value.map((one, place) => (String(place) === part ? leaveOut(one, rest, mark) : one))
  if (value === null || typeof value !== 'object' || !Object.hasOwn(value, part)) return value
  return { ...value, [part]: leaveOut((value as Fields)[part], rest, mark) }
}

function markOf(entry: unknown): unknown {
  return entry !== null && typeof entry === 'object' && 'mark' in entry ? entry.mark : undefined
}
