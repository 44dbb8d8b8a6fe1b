import type { BodyOf } from '../facts/fact-kinds'
import { type PointRecord, RECORD_SCHEMAS } from '../records/record'

type Changes = BodyOf<'corrected'>['changes']
export type CorrectionRefusal = { code: 'from-differs' | 'path-missing' | 'not-a-record'; path: string }

/**
 * Apply the changes of one correction to a record, all or none. Each `from` must equal the present value (a missing value equals null), and the
 * result must parse as a record of the same type: otherwise the refusal says at which path.
 */
export function applyCorrection(
  record: PointRecord,
  changes: Changes,
): { ok: true; record: PointRecord } | { ok: false; refusal: CorrectionRefusal } {
  const copy: unknown = structuredClone(record)
  for (const change of changes) {
    const path = change.path.join('.')
    const holder = change.path.slice(0, -1).reduce<unknown>((value, part) => valueAt(value, part), copy)
    const last = change.path.at(-1)
    if (holder === null || typeof holder !== 'object' || last === undefined)
      return { ok: false, refusal: { code: 'path-missing', path } }
    if (!isSameJson(valueAt(holder, last) ?? null, change.from))
      return { ok: false, refusal: { code: 'from-differs', path } }
    putAt(holder, last, change.to)
  }
  const parsed = RECORD_SCHEMAS[record.type].safeParse(copy)
  if (!parsed.success)
    return { ok: false, refusal: { code: 'not-a-record', path: parsed.error.issues[0]?.path.join('.') ?? 'type' } }
  return { ok: true, record: parsed.data }
}

function valueAt(value: unknown, part: string | number): unknown {
  if (value === null || typeof value !== 'object' || !Object.hasOwn(value, part)) return undefined
  return (value as Record<string | number, unknown>)[part]
}

function putAt(holder: object, part: string | number, to: unknown): void {
  const fields = holder as Record<string | number, unknown>
  if (to === null) delete fields[part]
  else Object.defineProperty(fields, part, { value: to, writable: true, enumerable: true, configurable: true })
}

/** Whether two JSON values are equal, whatever the order of their keys. */
export function isSameJson(a: unknown, b: unknown): boolean {
  if (a === b) return true
  if (
    a === null ||
    b === null ||
    typeof a !== 'object' ||
    typeof b !== 'object' ||
    Array.isArray(a) !== Array.isArray(b)
  )
    return false
  const keys = Object.keys(a)
  return (
    keys.length === Object.keys(b).length &&
    keys.every(
      (key) =>
        Object.hasOwn(b, key) && isSameJson((a as Record<string, unknown>)[key], (b as Record<string, unknown>)[key]),
    )
  )
}
