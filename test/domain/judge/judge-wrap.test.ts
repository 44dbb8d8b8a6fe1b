import { describe, expect, it } from 'vitest'
import { decimal } from '@/lib/domain/decimal'
import { judgeCriterion } from '@/lib/domain/judge/judge-criterion'
import { measured } from '@/lib/domain/reading'
import type { RecordOf } from '@/lib/domain/records/record'
import type { Rule } from '@/lib/domain/specification'
import { at, contextOf, criterion, person, recordedAt, specificationOf, stream } from './judge-fixtures'

const defect = {
  holeAxial: measured('3', 'mm'),
  holeHoop: measured('2', 'mm'),
  nominalWall: measured('6.0', 'mm'),
} as RecordOf<'defect'>
const design = { plies: measured('8', 'plies'), totalLength: measured('300', 'mm') } as RecordOf<'design'>
const rows = (pairs: [string, string][]) =>
  pairs.map(([temp, minutes]) => ({ temp: decimal(temp), minutes: decimal(minutes) }))
const HARD: Rule = {
  kind: 'hardening-time',
  table: {
    kind: 'interpolated',
    rows: rows([
      ['12', '38'],
      ['18', '26'],
      ['25', '17'],
    ]),
  },
}

type Plug = Extract<RecordOf<'arrest'>['arrest'], { method: 'plug, plate and band' }>
const plug = (changes: Partial<Plug> = {}) =>
  recordedAt('05-14 09:02', {
    type: 'arrest',
    arrest: {
      method: 'plug, plate and band',
      girths: [measured('359.0', 'mm'), measured('359.2', 'mm')],
      bandThickness: measured('0.7', 'mm'),
      bandCut: measured('425', 'mm'),
      bandTail: measured('60', 'mm'),
      bandBuild: measured('0.5', 'mm'),
      plateThickness: measured('0.5', 'mm'),
      puttyBatch: stream('batch:PS-0419'),
      puttyUsed: measured('500', 'mm3'),
      kneadStart: at('05-14 09:02:10'),
      kneadEnd: at('05-14 09:05:30'),
      oneColour: 'yes',
      ambient: measured('18.2', 'degC'),
      pressedAt: at('05-14 09:06'),
      bandTightAt: at('05-14 09:08'),
      judgedHardAt: at('05-14 09:34'),
      overHole: 'yes',
      surplusCut: 'yes',
      nonSparkingAsked: 'yes',
      nonSparkingTools: 'yes',
      ...changes,
    },
  })
const judge = (rule: Rule, records: ReturnType<typeof plug>[], more: Parameters<typeof contextOf>[2] = {}) =>
  judgeCriterion(criterion(rule, '08'), contextOf([criterion(rule, '08')], records, { defect, design, ...more }))

describe('plug, plate and band of MD-0044', () => {
  it('is hard after 25.7 min at 18.2 °C', () => {
    expect(judge(HARD, [plug()])).toMatchObject({
      verdict: 'pass',
      found: '09:06 to 09:34 = 28 min, ≥ 25.7 min at 18.2 °C',
    })
    expect(judge(HARD, [plug({ judgedHardAt: at('05-14 09:31') })])).toMatchObject({
      verdict: 'fail',
      findings: [{ code: 'hardening-too-short', found: '25 min', limit: '≥ 25.7 min at 18.2 °C' }],
    })
    expect(judge(HARD, [plug({ ambient: measured('25.1', 'degC') })]).findings[0]?.code).toBe('too-warm')
    expect(judge(HARD, [plug({ ambient: measured('11.9', 'degC') })]).findings[0]?.code).toBe('temp-below-table')
  })

  it.each([
    ['500', 'pass', undefined],
    ['70.7', 'pass', undefined],
    ['70.6', 'fail', 'plug-too-small'],
  ] as const)('putty %s mm³ of 70.7 needed', (used, verdict, code) => {
    const result = judge({ kind: 'plug-amount', timesHoleVolume: decimal('2.5') }, [
      plug({ puttyUsed: measured(used, 'mm3') }),
    ])
    expect([result.verdict, result.findings[0]?.code]).toEqual([verdict, code])
    expect(result.found).toContain('≥ 70.7 mm³')
  })

  it.each([
    ['425', '60', 'pass', undefined],
    ['424.5', '60', 'pass', undefined],
    ['424.4', '60', 'fail', 'band-too-short'],
    ['425', '45', 'pass', undefined],
    ['425', '44.9', 'fail', 'tail-too-short'],
  ] as const)('band cut %s, tail %s', (cut, tail, verdict, code) => {
    const result = judge({ kind: 'band-length', tailAtLeast: decimal('45') }, [
      plug({ bandCut: measured(cut, 'mm'), bandTail: measured(tail, 'mm') }),
    ])
    expect([result.verdict, result.findings[0]?.code]).toEqual([verdict, code])
    if (tail === '60') expect(result.found).toContain('≥ 424.4 mm')
  })

  it('demands non-sparking tools only where the area asks for them', () => {
    const yes: Rule = { kind: 'yes', flag: 'non-sparking-tools' }
    expect(judge(yes, [plug({ nonSparkingTools: 'no' })])).toMatchObject({
      verdict: 'fail',
      findings: [{ code: 'stated-no' }],
    })
    expect(judge(yes, [plug({ nonSparkingTools: 'no', nonSparkingAsked: 'no' })])).toMatchObject({
      verdict: 'pass',
      found: 'not asked for',
    })
    expect(judge(yes, [])).toMatchObject({ verdict: 'not proven', findings: [{ code: 'statement-missing' }] })
  })
})

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
