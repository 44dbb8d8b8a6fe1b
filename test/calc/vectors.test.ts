import { createHash } from 'node:crypto'
import { existsSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { describe, expect, test } from 'vitest'
import { runVectors } from '@/lib/calc/vectors-run'

const path = fileURLToPath(new URL('../../../shared/vectors/vectors.json', import.meta.url))
const sha256 = (bytes: Uint8Array) => new Uint8Array(createHash('sha256').update(bytes).digest())

describe('reference cases', () => {
  test('every published case is met', ({ skip }) => {
    if (!existsSync(path)) skip('the reference cases are not beside this project')
    const run = runVectors(JSON.parse(readFileSync(path, 'utf8')), sha256)
    expect(run.mismatches).toEqual([])
    expect(run.passed).toBe(255)
  })
})

describe('the runner', () => {
  const one = (expected: unknown, inputs: object = { grade: 'St 3' }) => ({
    vectors: [{ id: 'X', fn: 'clean.parse', inputs, expected, tolerance: { abs: 0, rel: 0 } }],
  })

  test('a wrong expectation, a number in place of a refusal and a refusal in place of a number are mismatches', () => {
    expect(runVectors(one({ level: '3' }), sha256)).toEqual({ passed: 1, mismatches: [] })
    const wrong = runVectors(one({ level: '2' }), sha256)
    expect(wrong).toMatchObject({ passed: 0, mismatches: [{ id: 'X', expected: { level: '2' } }] })
    expect(runVectors(one({ refused: 'unknown_grade' }), sha256).passed).toBe(0)
    expect(runVectors(one({ level: '3' }, { grade: 'St 9' }), sha256).passed).toBe(0)
  })

  test('a number beyond the tolerance, a list of another length and an object with another key are mismatches', () => {
    const stats = (expected: object, abs = 0.01) => ({
      vectors: [
        {
          id: 'X',
          fn: 'gs1.parse',
          inputs: { text: '(17)270600', ref_year: 2026 },
          expected,
          tolerance: { abs, rel: 0 },
        },
        {
          id: 'Y',
          fn: 'thick.direct',
          inputs: { readings_mm: [5, 6], required_mm: 7 },
          expected: { min_mm: 5.02, low_at: [0] },
          tolerance: { abs, rel: 0 },
        },
      ],
    })
    const run = runVectors(stats({ date_17: { date: '2027-06-30' } }), sha256)
    expect(run.mismatches.map(({ id }) => id)).toEqual(['X', 'Y'])
  })

  test.each([
    ['no list', {}],
    ['a case that is not complete', { vectors: [{ id: 'X' }] }],
    ['an unknown function', { vectors: [{ ...one({}).vectors[0], fn: 'none' }] }],
  ])('a file with %s is broken', (_name, json) => {
    expect(() => runVectors(json, sha256)).toThrow(TypeError)
  })
})
