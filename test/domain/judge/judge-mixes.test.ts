import { describe, expect, it } from 'vitest'
import { decimal } from '@/lib/domain/decimal'
import { judgeCriterion } from '@/lib/domain/judge/judge-criterion'
import { measured } from '@/lib/domain/reading'
import type { Rule } from '@/lib/domain/specification'
import { at, contextOf, criterion, point, recordedAt, stream } from './judge-fixtures'

const RATIO: Rule = { kind: 'ratio', partBPer100: decimal('38'), tolerance: decimal('1.5') }
const rows = (pairs: [string, string][]) =>
  pairs.map(([temp, minutes]) => ({ temp: decimal(temp), minutes: decimal(minutes) }))
const STEP: Rule = {
  kind: 'working-time',
  of: 'resin-mix',
  table: {
    kind: 'step',
    rows: rows([
      ['16', '31'],
      ['21', '24'],
      ['27', '17'],
    ]),
  },
}
const ROLL: Rule = {
  kind: 'working-time',
  of: 'tape-roll',
  table: {
    kind: 'interpolated',
    rows: rows([
      ['12', '4.0'],
      ['20', '2.75'],
      ['28', '1.75'],
    ]),
  },
}

const part = (batch: string, grams?: string) => [
  { batch: stream(`batch:${batch}`), ...(grams ? { amount: measured(grams, 'g') } : {}) },
]
const filler = (a?: string, b?: string, proportion: 'by mass' | 'by volume' | 'whole kit' = 'by mass') =>
  recordedAt('05-12 10:05', {
    type: 'filler-mix',
    mixNo: 'F1',
    partA: part('FP-118', a),
    partB: part('FP-118', b),
    proportion,
    startedAt: at('05-12 10:05'),
  })
const resin = (from: string, to: string | null, temp: string | null, mixNo = 'M1') =>
  recordedAt(from, {
    type: 'resin-mix',
    mixNo,
    partA: part('RS-884', '870'),
    partB: part('HB-2270', '331'),
    proportion: 'by mass',
    startedAt: at(from),
    ...(to ? { usedBy: at(to) } : {}),
    ...(temp ? { resinTemp: measured(temp, 'degC') } : {}),
  })
const judge = (rule: Rule, records: ReturnType<typeof filler>[], more: Parameters<typeof contextOf>[2] = {}) =>
  judgeCriterion(criterion(rule, '14'), contextOf([criterion(rule, '14')], records, more))

describe('mixing ratio by mass', () => {
  it.each([
    ['640', '243', 'pass', '38.0'],
    ['640', '244', 'pass', '38.1'],
    ['870', '331', 'pass', '38.0'],
    ['760', '289', 'pass', '38.0'],
    ['760', '288', 'pass', '37.9'],
    ['300', '114', 'pass', '38.0'],
    ['720', '274', 'pass', '38.1'],
    ['1000', '395', 'pass', '39.5'],
    ['1000', '365', 'pass', '36.5'],
    ['1000', '395.1', 'fail', '39.51'],
    ['1000', '364.9', 'fail', '36.49'],
    ['1000', '394.9', 'pass', '39.49'],
  ] as const)('%s + %s g', (a, b, verdict, found) => {
    const result = judge(RATIO, [filler(a, b)])
    expect([result.verdict, result.found, result.findings[0]?.code]).toEqual([
      verdict,
      found,
      verdict === 'fail' ? 'ratio-outside' : undefined,
    ])
  })
  it.each([
    [filler(undefined, undefined, 'whole kit'), 'pass', 'whole kit, no weighing', undefined],
    [filler('640', '243', 'by volume'), 'not proven', 'by volume', 'by-volume'],
    [filler('640'), 'not proven', 'not weighed', 'mass-missing'],
  ] as const)('%#', (record, verdict, found, code) => {
    const result = judge(RATIO, [record])
    expect([result.verdict, result.found, result.findings[0]?.code]).toEqual([verdict, found, code])
  })
})

describe('working time by steps', () => {
  it.each([
    ['05-12 12:00', '20.3', 'pass', undefined],
    ['05-12 12:04', '21.0', 'pass', undefined],
    ['05-12 12:04:01', '21.0', 'fail', 'working-time-exceeded'],
    ['05-12 11:57', '21.1', 'pass', undefined],
    ['05-12 11:58', '21.1', 'fail', 'working-time-exceeded'],
    ['05-12 11:41', '27.0', 'pass', undefined],
    ['05-12 11:41', '27.1', 'fail', 'too-warm'],
    ['05-12 11:41', null, 'not proven', 'temperature-missing'],
    ['05-12 11:39', '20.3', 'not proven', 'end-before-start'],
  ] as const)('mixed 11:40, used by %s at %s °C', (to, temp, verdict, code) => {
    const result = judge(STEP, [resin('05-12 11:40', to, temp)])
    expect([result.verdict, result.findings[0]?.code]).toEqual([verdict, code])
  })
  it('is not proven while the mix is in use and fails once the time is over', () => {
    expect(judge(STEP, [resin('05-12 11:40', null, '20.3')], { asOf: at('05-12 12:00') }).findings[0]?.code).toBe(
      'working-time-running',
    )
    expect(judge(STEP, [resin('05-12 11:40', null, '20.3')], { asOf: at('05-12 12:05') })).toMatchObject({
      verdict: 'fail',
      findings: [{ code: 'working-time-exceeded' }],
    })
  })
  it('takes the last ply of the mix where its end is not stated', () => {
    const ply = recordedAt(
      '05-12 12:03',
      { type: 'ply', plyNo: 1, mixNo: 'M1', startedAt: at('05-12 11:59'), endedAt: at('05-12 12:03') },
      { point: point('14') },
    )
    expect(judge(STEP, [resin('05-12 11:40', null, '20.3'), ply])).toMatchObject({
      verdict: 'pass',
      found: 'M1: 11:40 to 12:03 = 23 min of 24 min at 20.3 °C',
    })
  })
})

describe('working time of tape rolls, MD-0044', () => {
  const roll = (rollNo: number, soak: string, end: string, surface = '18.6') =>
    recordedAt(soak, {
      type: 'tape-roll',
      rollNo,
      soakStart: at(soak),
      wrapStart: at(soak),
      wrapEnd: at(end),
      surface: measured(surface, 'degC'),
    })
  it('allows 2.93 min at 18.6 °C: 2.92 and 2.75 min used', () => {
    const result = judge(ROLL, [
      roll(1, '05-14 11:32:05', '05-14 11:35:00'),
      roll(2, '05-14 11:35:40', '05-14 11:38:25'),
    ])
    expect(result.verdict).toBe('pass')
    expect(result.working).toEqual([
      'roll 1: 11:32:05 to 11:35 = 2.92 min of 2.93 min at 18.6 °C',
      'roll 2: 11:35:40 to 11:38:25 = 2.75 min of 2.93 min at 18.6 °C',
    ])
  })
  it.each([
    ['05-14 11:35:01', '18.6', 'fail', 'working-time-exceeded'],
    ['05-14 11:33', '28.1', 'fail', 'too-warm'],
    ['05-14 11:33', '11.9', 'not proven', 'temp-below-table'],
  ] as const)('%s at %s', (end, surface, verdict, code) => {
    expect(judge(ROLL, [roll(1, '05-14 11:32:05', end, surface)])).toMatchObject({ verdict, findings: [{ code }] })
  })
})
