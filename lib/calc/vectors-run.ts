import type { Sha256 } from '@/lib/calc/merkle-tree'
import { vectorsTable } from '@/lib/calc/vectors-table'

interface ReferenceCase {
  readonly id: string
  readonly fn: string
  readonly inputs: Readonly<Record<string, unknown>>
  readonly expected: unknown
  readonly tolerance: { readonly abs: number; readonly rel: number }
}

/** A case whose answer differs from the expected one. */
export interface VectorMismatch {
  readonly id: string
  readonly got: unknown
  readonly expected: unknown
}

type JsonObject = Readonly<Record<string, unknown>>

const isObject = (value: unknown): value is JsonObject =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

function isReferenceCase(value: unknown): value is ReferenceCase {
  return (
    isObject(value) &&
    typeof value.id === 'string' &&
    typeof value.fn === 'string' &&
    isObject(value.inputs) &&
    'expected' in value &&
    isObject(value.tolerance) &&
    typeof value.tolerance.abs === 'number' &&
    typeof value.tolerance.rel === 'number'
  )
}

type Tolerance = ReferenceCase['tolerance']

function isSame(got: unknown, expected: unknown, tolerance: Tolerance): boolean {
  if (typeof expected === 'number') {
    return typeof got === 'number' && Math.abs(got - expected) <= tolerance.abs + tolerance.rel * Math.abs(expected)
  }
  if (Array.isArray(expected)) {
    if (!Array.isArray(got) || got.length !== expected.length) return false
    return expected.every((value, index) => isSame(got[index], value, tolerance))
  }
  if (isObject(expected)) {
    return (
      isObject(got) &&
      Object.keys(got).length === Object.keys(expected).length &&
      Object.entries(expected).every(([key, value]) => isSame(got[key], value, tolerance))
    )
  }
  return got === expected
}

/** The answer itself may carry keys that the case does not name; objects inside it may not. A refusal is met only by its code. */
function isMet(got: unknown, { expected, tolerance }: ReferenceCase): boolean {
  if (!isObject(expected)) return isSame(got, expected, tolerance)
  if (!isObject(got) || 'refused' in got !== 'refused' in expected) return false
  return Object.entries(expected).every(([key, value]) => isSame(got[key], value, tolerance))
}

/**
 * Run reference cases `{ vectors: [{ id, fn, inputs, expected, tolerance }] }` against the formulas and count those that are met.
 * @throws TypeError when the text is not such a list or names an unknown function: the file is broken, not the formula.
 */
export function runVectors(
  json: unknown,
  sha256: Sha256,
): { readonly passed: number; readonly mismatches: readonly VectorMismatch[] } {
  if (!isObject(json) || !Array.isArray(json.vectors)) throw new TypeError('no list of reference cases')
  const table = vectorsTable(sha256)
  const mismatches: VectorMismatch[] = []
  for (const reference of json.vectors) {
    if (!isReferenceCase(reference)) throw new TypeError('a reference case is not complete')
    const compute = table[reference.fn]
    if (compute === undefined) throw new TypeError(`unknown reference function ${reference.fn}`)
    const got = compute(reference.inputs)
    if (!isMet(got, reference)) mismatches.push({ id: reference.id, got, expected: reference.expected })
  }
  return { passed: json.vectors.length - mismatches.length, mismatches }
}
