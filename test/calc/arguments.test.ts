import { describe, expect, test } from 'vitest'
import {
  defaulted,
  factorUpToOne,
  flag,
  list,
  missingAs,
  notNegative,
  number,
  oneOf,
  optional,
  pair,
  poisson,
  positive,
  strain,
  text,
  whole,
} from '@/lib/calc/argument'
import { calendarDay } from '@/lib/calc/calendar-day'
import { formula } from '@/lib/calc/formula'
import { isRefused, refuse } from '@/lib/calc/refusal'

const NOTHING = [null, undefined] as const

describe('arguments as they are read', () => {
  test.each([
    [
      'number',
      number('x'),
      'x',
      [1, -1, 0],
      [
        ['1', 'not_a_number_x'],
        [Number.NaN, 'not_finite_x'],
        [Number.POSITIVE_INFINITY, 'not_finite_x'],
      ],
    ],
    [
      'positive',
      positive('x'),
      'x',
      [1e-12, 4],
      [
        [0, 'not_positive_x'],
        [-1, 'not_positive_x'],
        ['1', 'not_a_number_x'],
      ],
    ],
    ['notNegative', notNegative('x'), 'x', [0, 4], [[-1e-12, 'negative_x']]],
    [
      'whole',
      whole('x'),
      'x',
      [-3, 0, 7],
      [
        [1.5, 'x_not_whole'],
        [2 ** 53, 'x_not_whole'],
      ],
    ],
    [
      'whole from 0',
      whole('x', 0),
      'x',
      [0, 7],
      [
        [-1, 'negative_x'],
        [-0.5, 'negative_x'],
        [0.5, 'x_not_whole'],
      ],
    ],
    [
      'whole from 1',
      whole('x', 1),
      'x',
      [1, 7],
      [
        [0, 'not_positive_x'],
        [-1, 'not_positive_x'],
        [1.5, 'x_not_whole'],
      ],
    ],
    [
      'factorUpToOne',
      factorUpToOne('x'),
      'x',
      [0.1, 1],
      [
        [0, 'not_positive_x'],
        [1.001, 'x_above_one'],
      ],
    ],
    [
      'strain',
      strain('x'),
      'x',
      [0.0001, 0.02],
      [
        [0.0201, 'strain_not_a_fraction'],
        [0, 'not_positive_x'],
      ],
    ],
    [
      'poisson',
      poisson('x'),
      'x',
      [0, 0.99],
      [
        [1, 'x_not_below_one'],
        [-0.1, 'negative_x'],
      ],
    ],
    ['flag', flag('x'), 'x', [true, false], [[1, 'not_a_boolean_x']]],
    ['text', text('x'), 'x', ['', 'a'], [[1, 'not_text_x']]],
    [
      'oneOf',
      oneOf('x', ['a', 'b']),
      'x',
      ['a', 'b'],
      [
        ['c', 'unknown_x'],
        [1, 'unknown_x'],
      ],
    ],
    [
      'calendarDay',
      calendarDay('x'),
      'x',
      [],
      [
        [20260101, 'bad_date_x'],
        ['2026-02-30', 'bad_date_x'],
        ['a2026-02-20', 'bad_date_x'],
        ['2026-02-20b', 'bad_date_x'],
        ['2026-13-01', 'bad_date_x'],
        ['2026-00-10', 'bad_date_x'],
        ['2026-10-00', 'bad_date_x'],
        ['0000-10-10', 'bad_date_x'],
        ['', 'missing_x'],
      ],
    ],
  ] as const)('%s', (_name, argument, code, good, bad) => {
    expect(argument.code).toBe(code)
    for (const value of good) expect(argument.read(value)).toBe(value)
    for (const value of NOTHING) expect(argument.read(value)).toEqual({ refused: `missing_${code}` })
    for (const [value, refusal] of bad) expect(argument.read(value)).toEqual({ refused: refusal })
  })

  test('a list and a pair tell what is missing, what they are not, and what their members refuse', () => {
    const lengths = list('x', positive('x'))
    expect(lengths.read([1, 2])).toEqual([1, 2])
    expect(lengths.read([])).toEqual([])
    expect(lengths.read([1, 0, 'a'])).toEqual({ refused: 'not_positive_x' })
    expect(lengths.read('12')).toEqual({ refused: 'not_a_list_x' })
    const row = pair('x', number('a'), positive('b'))
    expect(row.read([-1, 2])).toEqual([-1, 2])
    for (const wrong of [[1], [1, 2, 3], { 0: 1, 1: 2, length: 2 }, 'ab'])
      expect(row.read(wrong)).toEqual({ refused: 'not_a_pair_x' })
    expect(row.read([null, 2])).toEqual({ refused: 'missing_a' })
    expect(row.read([1, 0])).toEqual({ refused: 'not_positive_b' })
    for (const value of NOTHING) {
      expect(lengths.read(value)).toEqual({ refused: 'missing_x' })
      expect(row.read(value)).toEqual({ refused: 'missing_x' })
    }
  })

  test('left out is null for an optional, the stated value for a default, its own refusal where one is named; not known is never a default', () => {
    for (const value of NOTHING) expect(optional(positive('x')).read(value)).toBeNull()
    expect(optional(positive('x')).read(0)).toEqual({ refused: 'not_positive_x' })
    expect(defaulted(positive('x'), 5).read(undefined)).toBe(5)
    expect(defaulted(positive('x'), 5).read(null)).toEqual({ refused: 'missing_x' })
    expect(defaulted(positive('x'), 5).read(4)).toBe(4)
    for (const value of NOTHING)
      expect(missingAs('no_readings', positive('x')).read(value)).toEqual({ refused: 'no_readings' })
    expect(missingAs('no_readings', positive('x')).read(0)).toEqual({ refused: 'not_positive_x' })
    expect([optional(text('a')).code, defaulted(text('b'), '').code, missingAs('c', text('d')).code]).toEqual([
      'a',
      'b',
      'd',
    ])
    expect([list('e', text('x')).code, pair('f', text('x'), text('y')).code]).toEqual(['e', 'f'])
  })

  test('a formula reads in the order written, under its own names or those of the reference', () => {
    const sum = formula({ firstMm: number('a_mm'), secondMm: number('b_mm') }, ({ firstMm, secondMm }) => ({
      mm: firstMm + secondMm,
    }))
    expect(sum({ firstMm: 1, secondMm: 2 })).toEqual({ mm: 3 })
    expect(sum.byReferenceName({ a_mm: 1, b_mm: 2 })).toEqual({ mm: 3 })
    expect(sum({ firstMm: null, secondMm: Number.NaN })).toEqual({ refused: 'missing_a_mm' })
    expect(sum.byReferenceName({ firstMm: 1, secondMm: 2 })).toEqual({ refused: 'missing_a_mm' })
  })

  test('a refusal is told from every other answer', () => {
    expect(isRefused(refuse('x'))).toBe(true)
    for (const other of [null, undefined, 'refused', 0, {}, { refused: 1 }, [refuse('x')]])
      expect(isRefused(other)).toBe(false)
  })
})
