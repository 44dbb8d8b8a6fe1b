import { describe, expect, it } from 'vitest'
import { decimal } from '@/lib/domain/decimal'
import { measured } from '@/lib/domain/reading'
import type { Rule } from '@/lib/domain/specification'
import { at, criterion, person, recordedAt, specificationOf, stream } from './judge-fixtures'
import { judge } from './wrap-fixtures'

describe('the tape wrap of MD-0044', () => {
  const wrap = (pitches: string[], start = '152', passes = 4) =>
    recordedAt('05-14 11:40', {
      type: 'tape-wrap',
      tapeWidth: measured('75', 'mm'),
      pitches: pitches.map((one) => measured(one, 'mm')),
      passes,
      startBeforeLeak: measured(start, 'mm'),
      endAfterLeak: measured('152', 'mm'),
      measuredAt: at('05-14 11:40'),
      measuredBy: person('L1'),
    })
  const count = (by: string, plies = '8') =>
    recordedAt('05-14 11:41', {
      type: 'ply-count',
      plies: measured(plies, 'plies'),
      countedBy: person(by),
      countedAt: at('05-14 11:41'),
    })
  const tape = {
    specification: {
      stream: stream('specification:QP-T'),
      revision: 1,
      body: specificationOf([criterion({ kind: 'plies', countedBy: 2 }, '08')], { wrap: 'water-activated tape' }),
    },
  }

  it.each([
    ['32', 'pass', '57.3'],
    ['33.75', 'pass', '55.0'],
    ['33.8', 'fail', '54.9'],
    ['33.76', 'fail', '54.99'],
  ] as const)('pitch %s overlaps %s', (pitch, verdict, shown) => {
    const rule: Rule = {
      kind: 'each',
      quantity: 'tape-overlap',
      min: { from: 'specification', value: decimal('55'), unit: '%' },
    }
    expect(judge(rule, [wrap(['32', pitch])])).toMatchObject({ verdict, figures: { worst: shown } })
  })

  it.each([
    ['152', 'pass'],
    ['150', 'pass'],
    ['149.9', 'fail'],
  ] as const)('starts %s mm before the leak', (start, verdict) => {
    const result = judge({ kind: 'tape-start', shareOfTotalLength: decimal('0.5') }, [wrap(['32'], start)])
    expect([result.verdict, result.limit, result.findings[0]?.code]).toEqual([
      verdict,
      '≥ 150 mm before the leak',
      verdict === 'fail' ? 'start-too-near' : undefined,
    ])
  })

  it('has 8 plies in 4 passes of at least 2, counted by two persons', () => {
    const rule: Rule = { kind: 'plies', countedBy: 2 }
    expect(judge(rule, [wrap(['32', '32']), count('T1'), count('L1')], tape)).toMatchObject({
      verdict: 'pass',
      found: '8 by T1, 8 by L1, 4 passes of at least 2',
    })
    expect(judge(rule, [wrap(['32']), count('T1'), count('T1')], tape)).toMatchObject({
      verdict: 'not proven',
      findings: [{ code: 'too-few-counts', found: '1', limit: '2' }],
    })
    expect(judge(rule, [wrap(['32']), count('T1'), count('L1', '7')], tape)).toMatchObject({
      verdict: 'fail',
      findings: [{ code: 'ply-count-differs', mark: 'L1' }],
    })
    expect(judge(rule, [wrap(['32'], '152', 3), count('T1'), count('L1')], tape)).toMatchObject({
      verdict: 'fail',
      findings: [{ code: 'ply-count-differs' }],
    })
    expect(judge(rule, [count('T1'), count('L1')], tape)).toMatchObject({
      verdict: 'not proven',
      findings: [{ code: 'plies-not-recorded' }],
    })
    expect(judge(rule, [wrap(['76']), count('T1'), count('L1')], tape).findings[0]?.code).toBe('tape-apart')
    expect(judge(rule, [], { ...tape, design: null }).findings[0]?.code).toBe('design-missing')
  })

  it('wet lay-up wants every ply recorded once', () => {
    const ply = (no: number) => recordedAt('05-12 12:00', { type: 'ply', plyNo: no })
    const eight = [1, 2, 3, 4, 5, 6, 7, 8].map(ply)
    const rule: Rule = { kind: 'plies', countedBy: 2 }
    expect(judge(rule, [...eight, count('T1'), count('L1')]).verdict).toBe('pass')
    expect(judge(rule, [...eight.slice(1), count('T1'), count('L1')])).toMatchObject({
      verdict: 'not proven',
      findings: [{ code: 'plies-not-recorded', found: '7 recorded' }],
    })
    expect(judge(rule, [...eight, ply(9), count('T1'), count('L1')])).toMatchObject({
      verdict: 'fail',
      findings: [{ code: 'ply-count-differs' }],
    })
  })
})
