import type { DraftRecord } from '@/lib/domain/judge/judge-context'
import { RECORD_SCHEMAS, type RecordType } from '@/lib/domain/records/record'

type Fields = Record<string, unknown>

/**
 * The part of a half-filled form that can be judged: top-level fields that parse, and list entries that are complete. What is still being keyed
 * is left out, never filled in.
 */
export function settledPart(type: RecordType, values: Fields): DraftRecord {
  const schema = RECORD_SCHEMAS[type]
  let fields: Fields = Object.fromEntries(
    Object.entries(values).filter(([, value]) => value !== undefined && value !== null),
  )
  for (;;) {
    const parsed = schema.safeParse({ ...fields, type })
    const faults = !parsed.success
      ? parsed.error.issues.flatMap((issue) =>
          typeof issue.path[0] === 'string' && issue.path[0] in fields
            ? [issue.path]
            : issue.code === 'unrecognized_keys' && issue.path.length === 0
              ? issue.keys.map((key) => [key])
              : [],
        )
      : []
    if (faults.length === 0) return { ...fields, type } as DraftRecord
    fields = without(fields, faults)
  }
}

/** The fields without what is at fault: an entry of a list alone where the fault lies inside one, otherwise the whole field. */
function without(fields: Fields, faults: readonly PropertyKey[][]): Fields {
  const next: Fields = {}
  for (const [name, value] of Object.entries(fields)) {
    const own = faults.filter((path) => path[0] === name)
    if (own.length === 0) next[name] = value
    else if (Array.isArray(value) && own.every((path) => typeof path[1] === 'number')) {
      const entries = new Set(own.map((path) => path[1]))
      next[name] = value.filter((_, place) => !entries.has(place))
    }
  }
  return next
}
