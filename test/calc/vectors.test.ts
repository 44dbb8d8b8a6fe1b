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

  const answerOf = (fn: string, inputs: object, expected: unknown, tolerance = { abs: 0, rel: 0 }) =>
    runVectors({ vectors: [{ id: 'X', fn, inputs, expected, tolerance }] }, sha256).passed
  const DIRECT = { readings_mm: [5, 6, 4], required_mm: 5.5 }

  test.each([
    ['a list as it is', 'thick.direct', DIRECT, { low_at: [0, 2] }, 1],
    ['a list cut short', 'thick.direct', DIRECT, { low_at: [0] }, 0],
    ['a list in another order', 'thick.direct', DIRECT, { low_at: [2, 0] }, 0],
    ['a list where there is none', 'thick.direct', DIRECT, { n: [3] }, 0],
    ['a number where there is a list', 'thick.direct', DIRECT, { low_at: 0 }, 0],
    ['an object where there is a number', 'thick.direct', DIRECT, { n: {} }, 0],
    ['null where there is none', 'thick.direct', { readings_mm: [5] }, { ok: null }, 1],
    ['a plain answer', 'hard.same_scale', { a: 'barcol', b: 'barcol' }, true, 1],
    ['another plain answer', 'hard.same_scale', { a: 'barcol', b: 'barcol' }, false, 0],
    ['an object for a plain answer', 'hard.same_scale', { a: 'barcol', b: 'barcol' }, {}, 0],
    ['an object inside, whole', 'gs1.parse', { text: '(10)A' }, { elements: { '10': 'A' } }, 1],
    ['an object inside, with a key too few', 'gs1.parse', { text: '(10)A(21)B' }, { elements: { '10': 'A' } }, 0],
    ['an object inside, with another value', 'gs1.parse', { text: '(10)A' }, { elements: { '10': 'B' } }, 0],
    ['the refusal that comes', 'clean.parse', { grade: 'St 9' }, { refused: 'unknown_grade' }, 1],
    ['another refusal', 'clean.parse', { grade: 'St 9' }, { refused: 'missing_grade' }, 0],
  ])('%s: met %#', (_name, fn, inputs, expected, passed) => {
    expect(answerOf(fn, inputs, expected)).toBe(passed)
  })

  test.each([
    [5.1, 0.1, 0, 1],
    [5.11, 0.1, 0, 0],
    [4.9, 0.1, 0, 1],
    [10, 0, 0.5, 1],
    [10.1, 0, 0.5, 0],
    [8, 1, 0.25, 1],
  ])('5 against %d within %d and a share of %d: %d', (expected, abs, rel, passed) => {
    expect(answerOf('thick.direct', { readings_mm: [5] }, { min_mm: expected }, { abs: abs + 1e-12, rel })).toBe(passed)
  })

  test.each(['id', 'fn', 'inputs', 'expected', 'tolerance'])('a case without its %s is not complete', (key) => {
    const whole: Record<string, unknown> = { ...one({ level: '3' }).vectors[0] }
    delete whole[key]
    expect(() => runVectors({ vectors: [whole] }, sha256)).toThrow('a reference case is not complete')
    for (const tolerance of [{ abs: 0 }, { rel: 0 }, null])
      expect(() => runVectors({ vectors: [{ ...one({}).vectors[0], tolerance }] }, sha256)).toThrow('not complete')
  })

  test('a broken file says what is wrong with it', () => {
    for (const json of [null, [], { vectors: {} }])
      expect(() => runVectors(json, sha256)).toThrow('no list of reference cases')
    expect(() => runVectors({ vectors: [{ ...one({}).vectors[0], fn: 'none' }] }, sha256)).toThrow(
      'unknown reference function none',
    )
    expect(runVectors({ vectors: [] }, sha256)).toEqual({ passed: 0, mismatches: [] })
  })

  test.each([
    ['no list', {}],
    ['a case that is not complete', { vectors: [{ id: 'X' }] }],
    ['an unknown function', { vectors: [{ ...one({}).vectors[0], fn: 'none' }] }],
  ])('a file with %s is broken', (_name, json) => {
    expect(() => runVectors(json, sha256)).toThrow(TypeError)
  })
})
