import { describe, expect, test } from 'vitest'
import { quantitySheet } from '@/lib/domain/design/quantity-sheet'
import type { RepairState } from '@/lib/domain/fold/repair-state'
import { foldDemo } from '@/test/demo/folded-demo'
import { foldChanged } from './demo-design'

const lineOf = (state: RepairState, what: string, asked = {}) =>
  quantitySheet(state, asked).lines.find((one) => one.what === what)
const bare = (number: string) => foldChanged(number, { design: ({ quantities: _, ...record }) => record })

describe('MD-0041, wet lay-up, by hand', () => {
  const state = foldDemo('MD-0041')

  test('filler: 120 × 290 × 7.0 mm at 2.40 g/cm³ with 30 % spare, 100 to 38', () => {
    const mixedG = ((120 * 290 * 7 * 2.4) / 1000) * 1.3
    expect(mixedG.toFixed(1)).toBe('760.0')
    expect(lineOf(state, 'Filler, part A')).toMatchObject({
      needed: `${((mixedG * 100) / 138).toFixed(0)} g`,
      used: '640 g in 1 mix',
      difference: '89 g more (16 %)',
    })
    expect(lineOf(state, 'Filler, part B')).toMatchObject({ needed: `${((mixedG * 38) / 138).toFixed(0)} g` })
  })

  test('fabric: eleven girths, each ply 0.62 mm further out, with 8 % waste', () => {
    const girthsMm = Array.from({ length: 11 }, (_, at) => Math.PI * (273.1 + (2 * at + 1) * 0.62))
    const runM = (girthsMm.reduce((sum, one) => sum + one, 0) / 1000) * 1.08
    expect(runM.toFixed(2)).toBe('10.45')
    expect(lineOf(state, 'Fabric, length at full width')).toMatchObject({
      needed: '10.4 m',
      used: '11 plies laid, not measured',
      difference: null,
    })
  })

  test('resin: 3.42 m² of plies at 610 g/m² with 10 % spare, against two mixes', () => {
    const areaM2 = (Math.PI * (11 * 273.1 + 121 * 0.62) * 354) / 1e6
    const mixedG = areaM2 * 610 * 1.1
    expect(areaM2.toFixed(2)).toBe('3.42')
    expect(lineOf(state, 'Laminating resin, part A')).toMatchObject({
      needed: `${((mixedG * 100) / 138).toFixed(0)} g`,
      used: '1740 g in 2 mixes',
    })
    expect(lineOf(state, 'Hardener, part B')).toMatchObject({ used: '661 g in 2 mixes' })
  })

  test('a repair without a band draws none', () => {
    expect(lineOf(state, 'Band, cut length')).toBeUndefined()
  })
})

describe('MD-0044, plug, plate and band; tape', () => {
  const state = foldDemo('MD-0044')

  test('band 424.4 mm against 425 cut, putty 70.7 mm³ against 500 used', () => {
    expect(lineOf(state, 'Band, cut length')).toMatchObject({
      needed: '424.4 mm',
      used: '425 mm',
      difference: '0.6 mm more',
    })
    expect(lineOf(state, 'Putty, at the least')).toMatchObject({ needed: '70.7 mm³', used: '500 mm³' })
  })

  test('tape: four passes of seven turns and two in place, each 0.98 mm further out; two rolls', () => {
    const passMm = (0.42 * 75) / 32
    const turns = (300 - 75) / 32
    const lengthMm = [1, 2, 3, 4].reduce((sum, pass) => {
      const girthMm = Math.PI * (114.3 + (2 * pass - 1) * passMm)
      return sum + turns * Math.hypot(girthMm, 32) + 2 * girthMm
    }, 0)
    const rolls = (lengthMm * 1.1) / 7500
    expect([lengthMm.toFixed(0), rolls.toFixed(2)]).toEqual(['13457', '1.97'])
    expect(lineOf(state, 'Tape, rolls')).toMatchObject({
      needed: '2 rolls',
      used: '2 rolls',
      difference: 'as computed',
    })
    expect(lineOf(state, 'Tape, length')).toMatchObject({ needed: '14.8 m' })
  })
})

test('what was mixed and scrapped is in the sum and is named; nothing recorded is no zero', () => {
  const state = foldDemo('MD-0043')
  expect(lineOf(state, 'Laminating resin, part A')?.used).toMatch(/^720 g in 1 mix.*of it 720 g scrapped$/)
  expect(lineOf(state, 'Fabric, length at full width')).toMatchObject({ used: 'nothing recorded', difference: null })
})

describe('values that the design record does not state', () => {
  test('are asked for, and until then nothing is computed from them', () => {
    const sheet = quantitySheet(bare('MD-0044'), {})
    expect(sheet.asked.map((one) => one.key)).toEqual([
      'tail',
      'build',
      'bandThickness',
      'fillerLength',
      'fillerGirth',
      'fillerThickness',
      'fillerDensity',
      'fillerSpare',
      'tapeWidth',
      'tapePitch',
      'endTurns',
      'rollLength',
      'tapeWaste',
    ])
    expect(sheet.lines.filter((one) => one.needed !== null).map((one) => one.what)).toEqual(['Putty, at the least'])
    expect(lineOf(bare('MD-0044'), 'Tape, rolls')?.refusal).toBe('the width of the tape is missing')
  })

  test('typed on the page give the same figures as recorded ones, and say that they are typed', () => {
    const typed = { tail: '60', build: '0.5', bandThickness: '0.7' }
    const sheet = quantitySheet(bare('MD-0044'), typed)
    expect(sheet.lines.find((one) => one.what === 'Band, cut length')?.needed).toBe('424.4 mm')
    expect(sheet.inputs.find((one) => one.key === 'tail')?.from).toEqual({ kind: 'asked' })
  })

  test('a roll is typed in metres, and a spare of nothing is a spare of nothing', () => {
    const typed = { tapeWidth: '75', tapePitch: '32', endTurns: '2', rollLength: '7.5', tapeWaste: '0' }
    expect(lineOf(bare('MD-0044'), 'Tape, rolls', typed)?.needed).toBe('2 rolls')
    expect(lineOf(bare('MD-0044'), 'Tape, length', typed)?.needed).toBe('13.5 m')
  })

  test.each(['1,5', 'much', '< 3'])('“%s” is no number: it is named and stays unknown', (text) => {
    const sheet = quantitySheet(bare('MD-0044'), { tail: text })
    expect(sheet.asked.find((one) => one.key === 'tail')).toMatchObject({ text, isRead: false })
    expect(sheet.lines.find((one) => one.what === 'Band, cut length')?.refusal).toBe('the tail of the band is missing')
  })

  test('what is recorded is never replaced by what is typed', () => {
    expect(lineOf(foldDemo('MD-0044'), 'Band, cut length', { tail: '1000' })?.needed).toBe('424.4 mm')
    expect(quantitySheet(foldDemo('MD-0044'), { tail: '1000' }).asked).toEqual([])
  })
})
