import { describe, expect, it } from 'vitest'
import { judgeCriterion, judgePoint } from '@/lib/domain/judge/judge-criterion'
import { showFinding } from '@/lib/domain/judge/show-finding'
import { HARDNESS, THICKNESS } from './demo-grids'
import { at, contextOf, criterion, grid, hardness, limit, recordedAt, row, stream } from './judge-fixtures'

const EACH = (min: string) => criterion({ kind: 'each', quantity: 'hardness', min: limit(min, 'ShoreD') }, '16', 'EACH')
const MEAN = (min: string) => criterion({ kind: 'mean', quantity: 'hardness', min: limit(min, 'ShoreD') }, '16', 'MEAN')
const COUNT = criterion({ kind: 'count', quantity: 'hardness', atLeast: 20 }, '16', 'COUNT')

describe('hardness grids of the demo job', () => {
  it.each([
    ['MD-0041', '74', '77', '76', '79.45', 'pass', 'pass'],
    ['MD-0042 T1', '74', '77', '63', '71.50', 'fail', 'fail'],
    ['MD-0042 T2', '74', '77', '69', '74.90', 'fail', 'fail'],
    ['MD-0042 T3', '74', '77', '76', '78.40', 'pass', 'pass'],
    ['MD-0041 again', '74', '77', '75', '78.30', 'pass', 'pass'],
    ['MD-0044', '72', '75', '74', '76.25', 'pass', 'pass'],
  ] as const)('%s', (name, least, mean, worst, shownMean, eachVerdict, meanVerdict) => {
    const results = judgePoint(contextOf([EACH(least), MEAN(mean), COUNT], [hardness('05-13 07:25', HARDNESS[name])]))
    expect(results.map((one) => one.verdict)).toEqual([eachVerdict, meanVerdict, 'pass'])
    expect(results[0]?.figures).toMatchObject({ worst, count: 20, planned: 20 })
    expect(results[1]?.figures).toMatchObject({ mean: shownMean, count: 20, planned: 20 })
    expect(results[2]?.found).toBe('20 taken of 20 planned')
  })

  it('names the twelve marks of T1 and the five of T2 below 74, each with found, limit and clause', () => {
    const below = (name: 'MD-0042 T1' | 'MD-0042 T2') =>
      judgeCriterion(EACH('74'), contextOf([EACH('74'), COUNT], [hardness('05-20 08:10', HARDNESS[name])])).findings
    expect(below('MD-0042 T1')).toHaveLength(12)
    expect(below('MD-0042 T2').map((one) => one.mark)).toEqual(['A-6', 'B-6', 'C-6', 'D-6', 'E-6'])
    expect(below('MD-0042 T2')[2]).toMatchObject({
      code: 'reading-below-limit',
      mark: 'C-6',
      found: '69 Shore D',
      limit: '≥ 74 Shore D',
      clause: '7.3',
    })
    expect(showFinding(below('MD-0042 T2')[2] ?? { code: '', clause: '', facts: [] })).toBe(
      '69 Shore D at C-6 is below 74 Shore D (7.3).',
    )
  })
})

describe('thickness grids of the demo job', () => {
  it.each([
    ['MD-0041', '6.9', '7.14'],
    ['MD-0042', '5.7', '5.94'],
    ['MD-0044', '3.7', '3.91'],
  ] as const)('%s', (name, worst, mean) => {
    const each = criterion({ kind: 'each', quantity: 'laminate-thickness', min: limit('3.2', 'mm') }, '17', 'T1')
    const average = criterion({ kind: 'mean', quantity: 'laminate-thickness', min: limit('3.2', 'mm') }, '17', 'T2')
    const record = recordedAt('05-13 07:50', {
      type: 'thickness',
      readings: grid('mm', THICKNESS[name]),
      takenAt: at('05-13 07:50'),
      instrument: stream('instrument:LG-06'),
    })
    const [first, second] = judgePoint(contextOf([each, average], [record]))
    expect([first?.figures.worst, second?.figures.mean, first?.figures.count]).toEqual([worst, mean, 20])
  })
})

describe('profile means of the demo job', () => {
  it.each([
    ['84 88 91 79 86 93 82 87', '86.3'],
    ['76 81 74 83 79 85 72 80', '78.8'],
    ['90 86 95 88 92 84 97 89', '90.1'],
    ['72 78 69 75 81 74 70 77', '74.5'],
  ])('%s', (readings, mean) => {
    const average = criterion(
      { kind: 'mean', quantity: 'profile', min: limit('65', 'um'), max: limit('115', 'um') },
      '06',
    )
    const record = recordedAt('05-12 09:15', {
      type: 'profile',
      method: 'stylus',
      readings: row('um', readings),
      takenAt: at('05-12 09:15'),
    })
    expect(judgeCriterion(average, contextOf([average], [record]))).toMatchObject({
      verdict: 'pass',
      figures: { mean },
    })
  })
})

describe('a limit', () => {
  const judge = (text: string, bounds: { min?: string; max?: string }) => {
    const each = criterion(
      {
        kind: 'each',
        quantity: 'profile',
        ...(bounds.min ? { min: limit(bounds.min, 'um') } : {}),
        ...(bounds.max ? { max: limit(bounds.max, 'um') } : {}),
      },
      '06',
    )
    const record = recordedAt('05-12 09:15', { type: 'profile', readings: row('um', text), takenAt: at('05-12 09:15') })
    return judgeCriterion(each, contextOf([each], [record]))
  }

  it.each([
    ['65', 'pass'],
    ['65.1', 'pass'],
    ['64.9', 'fail'],
    ['115', 'pass'],
    ['114.9', 'pass'],
    ['115.1', 'fail'],
    ['64.999999', 'fail'],
  ] as const)('%s within 65 to 115', (text, verdict) => {
    expect(judge(text, { min: '65', max: '115' }).verdict).toBe(verdict)
  })

  it.each([
    ['< 25', 'pass'],
    ['< 25.1', 'not proven'],
    ['> 25', 'fail'],
    ['> 24', 'not proven'],
    ['TW', 'not proven'],
  ] as const)('%s against at most 25', (text, verdict) => {
    expect(judge(text.replaceAll(' ', ''), { max: '25' }).verdict).toBe(verdict)
  })

  it.each([
    ['>25', 'pass', undefined],
    ['>24.9', 'not proven', 'reading-undecided'],
    ['<25', 'fail', 'reading-below-limit'],
    ['<26', 'not proven', 'reading-undecided'],
    ['TW', 'fail', 'through-wall'],
    ['NA', 'not proven', 'reading-missing'],
    ['-', 'not proven', 'reading-missing'],
  ] as const)('%s against at least 25', (text, verdict, code) => {
    const result = judge(text, { min: '25' })
    expect([result.verdict, result.findings[0]?.code]).toEqual([verdict, code])
  })

  it('is not proven without readings, and without a limit', () => {
    const each = criterion({ kind: 'each', quantity: 'profile', min: limit('65', 'um') }, '06')
    expect(judgeCriterion(each, contextOf([each], []))).toMatchObject({
      verdict: 'not proven',
      findings: [{ code: 'no-readings' }],
    })
    expect(judge('70', {})).toMatchObject({ verdict: 'not proven', findings: [{ code: 'no-limit' }] })
  })
})
