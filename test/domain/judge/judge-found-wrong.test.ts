import { describe, expect, it } from 'vitest'
import { judgeCriterion, judgePoint } from '@/lib/domain/judge/judge-criterion'
import { measured } from '@/lib/domain/reading'
import { HARDNESS } from './demo-grids'
import { contextOf, criterion, fact, hardness, limit } from './judge-fixtures'
import { certificate, envelope, judge, withInstrument } from './trace-fixtures'

describe('HD-03 found reading 3 too high on 06-04, last good full check 04-28', () => {
  const check = (when: string, coverage: 'full scale' | 'mid scale', no: number) =>
    envelope('check-made', no, 'instrument:HD-03', when, {
      coverage,
      reference: measured('77', 'ShoreD'),
      read: measured('77', 'ShoreD'),
      tolerance: measured('1', 'ShoreD'),
      result: 'within',
    })
  const wrong = envelope('found-wrong', 9100, 'instrument:HD-03', '06-04 09:00', {
    error: measured('3', 'ShoreD'),
    how: 'reference block',
  })
  const doubtful = withInstrument({
    foundWrong: [wrong],
    checks: [
      check('04-28 07:00', 'full scale', 9101),
      check('05-12 07:00', 'mid scale', 9102),
      check('05-22 07:00', 'mid scale', 9103),
    ],
  })
  it.each([
    ['MD-0041', '05-13 07:25', '74', '77', '73', '76.45', 'fail', 'fail'],
    ['MD-0042 T3', '05-22 08:30', '74', '77', '73', '75.40', 'fail', 'fail'],
    ['MD-0044', '05-14 14:10', '72', '75', '71', '73.25', 'fail', 'fail'],
  ] as const)('%s', (name, when, least, mean, worst, shownMean, eachVerdict, meanVerdict) => {
    const criteria = [
      criterion({ kind: 'each', quantity: 'hardness', min: limit(least, 'ShoreD') }, '16', 'E1'),
      criterion({ kind: 'mean', quantity: 'hardness', min: limit(mean, 'ShoreD') }, '16', 'M1'),
      criterion({ kind: 'instruments-valid' }, '16', 'I1'),
    ]
    const [each, average, valid] = judgePoint(contextOf(criteria, [hardness(when, HARDNESS[name])], doubtful))
    expect([each?.verdict, average?.verdict, valid?.verdict]).toEqual(['pass', 'pass', 'pass'])
    expect(each?.questions).toMatchObject([
      { cause: fact(9100), causeKind: 'instrument found wrong', corrected: { verdict: eachVerdict } },
    ])
    expect(each?.questions[0]?.corrected?.found).toContain(`lowest ${worst} Shore D`)
    expect(average?.questions[0]?.corrected).toEqual({ found: `mean ${shownMean} Shore D of 20`, verdict: meanVerdict })
    expect(valid?.questions).toHaveLength(1)
  })
  it('leaves readings before the last good full check, and those of another instrument, alone', () => {
    const each = criterion({ kind: 'each', quantity: 'hardness', min: limit('74', 'ShoreD') })
    expect(
      judgeCriterion(each, contextOf([each], [hardness('04-27 10:00', HARDNESS['MD-0041'])], doubtful)).questions,
    ).toEqual([])
    expect(
      judgeCriterion(
        each,
        contextOf([each], [hardness('05-13 07:25', HARDNESS['MD-0041'], 'instrument:HD-05')], doubtful),
      ).questions,
    ).toEqual([])
  })
  it('without a known error asks the question and corrects nothing', () => {
    const unknown = withInstrument({ foundWrong: [{ ...wrong, body: { how: 'dropped' } }], checks: [] })
    const result = judge(
      { kind: 'each', quantity: 'hardness', min: limit('74', 'ShoreD') },
      [hardness('05-13 07:25', HARDNESS['MD-0041'])],
      unknown,
    )
    expect(result.questions).toHaveLength(1)
    expect(result.questions[0]).not.toHaveProperty('corrected')
  })
})

describe('guard band', () => {
  const guarded = (text: string, uncertainty: string | null) => {
    const each = criterion({ kind: 'each', quantity: 'hardness', min: limit('74', 'ShoreD') })
    const base = contextOf(
      [each],
      [hardness('05-13 07:25', { 12: text })],
      withInstrument({
        certificates: [
          certificate(
            '2026-11-30',
            '2025-12-01',
            uncertainty ? { expandedUncertainty: measured(uncertainty, 'ShoreD') } : {},
          ),
        ],
      }),
    )
    return judgeCriterion(each, {
      ...base,
      specification: { ...base.specification, body: { ...base.specification.body, decisionRule: 'guard band' } },
    })
  }
  it.each([
    ['75', '1', 'pass', undefined],
    ['74.9', '1', 'not proven', 'inside-guard-band'],
    ['73', '1', 'not proven', 'inside-guard-band'],
    ['72.9', '1', 'fail', 'reading-below-limit'],
    ['74', '0', 'pass', undefined],
    ['80', null, 'not proven', 'uncertainty-missing'],
  ] as const)('%s with U %s', (text, uncertainty, verdict, code) => {
    const result = guarded(text, uncertainty)
    expect([result.verdict, result.findings[0]?.code]).toEqual([verdict, code])
  })
})
