import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { judgePoint } from '@/lib/domain/judge/judge-criterion'
import { measured } from '@/lib/domain/reading'
import { runsAsked } from '../../runs'
import { contextOf, criterion, hardness, limit, specificationOf } from './judge-fixtures'
import { certificate, withInstrument } from './trace-fixtures'

fc.configureGlobal({ numRuns: runsAsked() })

const CRITERIA = [
  criterion(
    { kind: 'each', quantity: 'hardness', min: limit('74', 'ShoreD'), max: limit('86', 'ShoreD') },
    '16',
    'EACH',
  ),
  criterion({ kind: 'each', quantity: 'hardness', min: limit('76', 'ShoreD') }, '16', 'LEAST'),
  criterion({ kind: 'mean', quantity: 'hardness', min: limit('77', 'ShoreD') }, '16', 'MEAN'),
]

function verdicts(tenths: readonly number[], rule: 'simple acceptance' | 'guard band', uncertaintyTenths: number) {
  const keyed = tenths.map((one) => (one / 10).toFixed(1)).join(' ')
  const expandedUncertainty = measured((uncertaintyTenths / 10).toFixed(1), 'ShoreD')
  const base = contextOf(
    CRITERIA,
    [hardness('05-13 07:25', { 12: keyed })],
    withInstrument({ certificates: [certificate('2026-11-30', '2025-12-01', { expandedUncertainty })] }),
  )
  const body = specificationOf(CRITERIA, { decisionRule: rule })
  return judgePoint({ ...base, specification: { ...base.specification, body } }).map((one) => one.verdict)
}

describe('the decision rule in general', () => {
  const readings = fc.array(fc.integer({ min: 700, max: 900 }), { minLength: 1, maxLength: 5 })

  it('a guard band never widens acceptance: what passes with it passes without it and with any narrower one', () => {
    fc.assert(
      fc.property(readings, fc.nat(30), fc.nat(30), (tenths, narrow, more) => {
        const plain = verdicts(tenths, 'simple acceptance', 0)
        const guarded = verdicts(tenths, 'guard band', narrow)
        const wider = verdicts(tenths, 'guard band', narrow + more)
        for (const place of CRITERIA.keys()) {
          if (guarded[place] === 'pass') expect(plain[place]).toBe('pass')
          if (wider[place] === 'pass') expect(guarded[place]).toBe('pass')
          if (guarded[place] === 'fail') expect(plain[place]).toBe('fail')
        }
      }),
    )
  })

  it('a band of no width is simple acceptance, and a band takes a bare pass away', () => {
    const kept = verdicts([800, 805], 'guard band', 10)
    expect(kept).toEqual(verdicts([800, 805], 'simple acceptance', 0))
    expect(kept.slice(0, 2)).toEqual(['pass', 'pass'])
    expect(verdicts([760], 'simple acceptance', 0)[1]).toBe('pass')
    expect(verdicts([760], 'guard band', 0)[1]).toBe('pass')
    expect(verdicts([760], 'guard band', 1)[1]).toBe('not proven')
  })
})
