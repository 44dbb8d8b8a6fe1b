import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { addMonths, dayNumber, dayOfNumber, parseDay, showDay } from '@/lib/calc/calendar-day'
import { canonicalJson } from '@/lib/calc/canonical-json'
import { parseCleanliness, relateGrades } from '@/lib/calc/cleanliness-grade'
import { parseGs1, writeGs1 } from '@/lib/calc/gs1-elements'
import { gtinCheckDigit, gtinMeets } from '@/lib/calc/gtin'
import { isRefused } from '@/lib/calc/refusal'
import { runsAsked } from '../runs'
import { answered } from './property-inputs'

fc.configureGlobal({ numRuns: runsAsked() })

const digits = (length: number) =>
  fc.array(fc.integer({ min: 0, max: 9 }), { minLength: length, maxLength: length }).map((list) => list.join(''))

describe('identity and days', () => {
  const SET_82 = '!"%&\'()*+,-./0123456789:;<=>?ABCDEFGHIJKLMNOPQRSTUVWXYZ_abcdefghijklmnopqrstuvwxyz'
  const field = fc.array(fc.constantFrom(...SET_82), { minLength: 1, maxLength: 20 }).map((signs) => signs.join(''))
  const gtin = digits(13).map((body) => `${body}${answered(gtinCheckDigit({ body })).digit}`)

  test('elements written as a scanned text read back the same', () => {
    fc.assert(
      fc.property(field, field, gtin, (batch, serial, code) => {
        const elements = { '10': batch, '21': serial, '01': code }
        expect(answered(parseGs1({ text: writeGs1(elements) })).elements).toEqual(elements)
      }),
    )
  })

  test('any one wrong digit of a GTIN is found', () => {
    fc.assert(
      fc.property(gtin, fc.nat(13), fc.integer({ min: 1, max: 9 }), (code, at, shift) => {
        const wrong = code.slice(0, at) + ((Number(code[at]) + shift) % 10) + code.slice(at + 1)
        expect(answered(gtinMeets({ gtin: code })).isMet).toBe(true)
        expect(answered(gtinMeets({ gtin: wrong })).isMet).toBe(false)
      }),
    )
  })

  const anyText = fc
    .array(fc.integer({ min: 0, max: 0xffff }), { maxLength: 40 })
    .map((codes) => String.fromCharCode(...codes))
  test('hostile text is refused or read, never a crash', () => {
    fc.assert(
      fc.property(anyText, (text) => {
        expect(parseGs1({ text, referenceYear: 2026 })).toBeTypeOf('object')
        expect(canonicalJson(text)).toBeTypeOf('object')
      }),
    )
  })

  const { json } = fc.letrec((tie) => ({
    json: fc.oneof(
      { maxDepth: 3, withCrossShrink: true },
      anyText,
      fc.double({ noNaN: true, noDefaultInfinity: true }),
      fc.boolean(),
      fc.constant(null),
      fc.array(tie('json'), { maxLength: 4 }),
      fc.dictionary(anyText, tie('json'), { maxKeys: 4 }),
    ),
  }))
  test('a canonical text is its own canonical text and keeps the value', () => {
    fc.assert(
      fc.property(json, (value) => {
        const written = canonicalJson(JSON.stringify(value))
        fc.pre(!isRefused(written))
        const { text } = answered(written)
        expect(canonicalJson(text)).toEqual({ text })
        expect(JSON.stringify(JSON.parse(text)).length).toBe(JSON.stringify(value).length)
      }),
    )
  })

  const day = fc.integer({ min: -200_000, max: 500_000 })
  test('a day counted and shown reads back the same, and months never pass the wanted month', () => {
    fc.assert(
      fc.property(day, fc.integer({ min: -60, max: 120 }), (count, months) => {
        const on = dayOfNumber(count)
        expect(dayNumber(on)).toBe(count)
        expect(parseDay(showDay(on))).toEqual(on)
        const later = addMonths(on, months)
        expect(later.year * 12 + later.month).toBe(on.year * 12 + on.month + months)
        expect(parseDay(showDay(later))).toEqual(later)
      }),
    )
  })

  test('grades are ordered inside a family and never across families', () => {
    const grades = ['St 2', 'St 3', 'Sa 1', 'Sa 2', 'Sa 2½', 'Sa 3', 'Wa 1', 'Wa 2', 'Wa 2½'].map((grade) =>
      answered(parseCleanliness({ grade })),
    )
    const any = fc.constantFrom(...grades)
    fc.assert(
      fc.property(any, any, any, (a, b, c) => {
        expect(relateGrades(a, a)).toBe('equal')
        expect(relateGrades(a, b) === 'incomparable').toBe(a.family !== b.family)
        expect(relateGrades(a, b) === 'better').toBe(relateGrades(b, a) === 'worse')
        if (relateGrades(a, b) === 'better' && relateGrades(b, c) === 'better')
          expect(relateGrades(a, c)).toBe('better')
      }),
    )
  })
})
