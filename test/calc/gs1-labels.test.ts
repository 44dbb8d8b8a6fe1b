import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type Gs1Elements, parseGs1, showGs1, symbolTextOf, writeGs1 } from '@/lib/calc/gs1-elements'
import { GS1_FIELDS } from '@/lib/calc/gs1-identifiers'
import { gtinCheckDigit } from '@/lib/calc/gtin'
import { isRefused } from '@/lib/calc/refusal'
import { runsAsked } from '../runs'
import { answered } from './property-inputs'

fc.configureGlobal({ numRuns: runsAsked() })

const read = (text: string) => parseGs1({ text, referenceYear: 2026, identifiers: 'label' })
const elementsOf = (text: string) => {
  const found = read(text)
  return isRefused(found) ? found : found.elements
}

describe('labels of batches, instruments and repairs', () => {
  test.each([
    ['(8004)735812004ABC-1', { '8004': '735812004ABC-1' }],
    ['8004735812004ABC-1', { '8004': '735812004ABC-1' }],
    ['(240)TP-50/3', { '240': 'TP-50/3' }],
    ['3103001250', { '3103': '001250' }],
    ['(3100)000012(10)A', { '3100': '000012', '10': 'A' }],
    ['31020012503105000001240X\u001d10B', { '3102': '001250', '3105': '000001', '240': 'X', '10': 'B' }],
    ['3101000001\u001d3104000002', { '3101': '000001', '3104': '000002' }],
  ])('%j is read as a label', (text, elements) => {
    expect(elementsOf(text)).toEqual(elements)
  })

  test.each([
    ['(3106)000123', 'unknown_ai'],
    ['310600123', 'unknown_ai'],
    ['(8004)', 'empty_8004'],
    [`(8004)${'9'.repeat(31)}`, 'length_8004'],
    [`240${'A'.repeat(31)}`, 'length_240'],
    ['(3103)12345', 'length_3103'],
    ['(3103)1234567', 'length_3103'],
    ['(3103)12345A', 'characters_3103'],
    ['10A\u001d9912', 'unknown_ai'],
    ['10A\u001d0112', 'length_01'],
  ])('%j is refused: %s', (text, code) => {
    expect(read(text)).toEqual({ refused: code })
  })

  test('thirty signs of an asset are whole, and the reference set knows no asset', () => {
    expect(elementsOf(`(8004)${'9'.repeat(30)}`)).toEqual({ '8004': '9'.repeat(30) })
    expect(parseGs1({ text: '(8004)7' })).toEqual({ refused: 'unknown_ai' })
    // @ts-expect-error the set of identifiers is one of two words
    expect(parseGs1({ text: '(8004)7', identifiers: 'all' })).toEqual({ refused: 'unknown_identifiers' })
    expect(GS1_FIELDS.reference.map(({ ai }) => ai)).toEqual(['01', '11', '17', '10', '21'])
  })

  const elements: Gs1Elements = { '10': 'R(47)11', '21': '7', '01': '07358120046275', '17': '270430' }
  test('a label is written with its fixed fields first and a separator only after a field that varies', () => {
    expect(writeGs1(elements)).toBe('01073581200462751727043010R(47)11\u001d217')
    expect(showGs1(elements)).toBe('(01)07358120046275(17)270430(10)R(47)11(21)7')
    expect(symbolTextOf(elements)).toBe('[01]07358120046275[17]270430[10]R(47)11[21]7')
    expect([writeGs1({}), showGs1({}), symbolTextOf({})]).toEqual(['', '', ''])
  })

  const SET_82 = '!"%&\'()*+,-./0123456789:;<=>?ABCDEFGHIJKLMNOPQRSTUVWXYZ_abcdefghijklmnopqrstuvwxyz'
  const signs = (most: number) =>
    fc.array(fc.constantFrom(...SET_82), { minLength: 1, maxLength: most }).map((list) => list.join(''))
  const digits = (count: number) =>
    fc.array(fc.nat(9), { minLength: count, maxLength: count }).map((list) => list.join(''))
  const fieldOf = (ai: string, fixed: number | null, most: number) => {
    if (ai === '01') return digits(13).map((body) => `${body}${answered(gtinCheckDigit({ body })).digit}`)
    if (ai === '11') return fc.constant('260100')
    if (ai === '17') return fc.constant('270431').map(() => '270430')
    return fixed === null ? signs(most) : digits(fixed)
  }
  const label = fc.record(
    Object.fromEntries(GS1_FIELDS.label.map((one) => [one.ai, fieldOf(one.ai, one.digits, one.most)])),
    {
      requiredKeys: [],
    },
  )

  test('whatever is written on a label is read back from it, scanned or keyed without brackets in its values', () => {
    fc.assert(
      fc.property(label, (given) => {
        fc.pre(Object.keys(given).length > 0)
        expect(elementsOf(writeGs1(given))).toEqual(given)
        if (!/\(\d{2,4}\)/.test(Object.values(given).join('|'))) expect(elementsOf(showGs1(given))).toEqual(given)
      }),
    )
  })
})
