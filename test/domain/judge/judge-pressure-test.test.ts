import { describe, expect, it } from 'vitest'
import { decimal } from '@/lib/domain/decimal'
import { measured } from '@/lib/domain/reading'
import type { RecordOf } from '@/lib/domain/records/record'
import type { Rule } from '@/lib/domain/specification'
import { judge } from './cure-fixtures'
import { at, recordedAt, stream } from './judge-fixtures'

describe('pressure test', () => {
  const correction = {
    modulusMPa: decimal('207000'),
    poisson: decimal('0.3'),
    alphaPerK: 1.2e-5,
    betaPerK: 1.5e-4,
    bulkModulusMPa: decimal('2150'),
    ends: 'free' as const,
  }
  const rule: Rule = { kind: 'pressure-drop', maxDrop: decimal('0.020'), minMinutes: decimal('75'), correction }
  const test = (
    rows: [string, string, string?][],
    noLeak: 'yes' | 'no' | undefined = 'yes',
    kind: RecordOf<'pressure-test'>['kind'] = 'pressure test',
  ) =>
    recordedAt('05-22 10:40', {
      type: 'pressure-test',
      kind,
      gauges: [stream('instrument:PG-21')],
      ...(noLeak ? { noLeak } : {}),
      readings: rows.map(([when, pressure, steel]) => ({
        at: at(when),
        pressure: measured(pressure, 'MPa'),
        ...(steel ? { steel: measured(steel, 'degC') } : {}),
      })),
    })
  const run = (last: string, end = '05-22 11:55', t1 = '13.1') =>
    test([
      ['05-22 10:40', '1.214', '13.1'],
      ['05-22 11:30', '1.210'],
      [end, last, t1],
    ])

  it.each([
    ['1.210', '05-22 11:55', 'pass', undefined],
    ['1.194', '05-22 11:55', 'pass', undefined],
    ['1.193', '05-22 11:55', 'fail', 'drop-too-large'],
    ['1.195', '05-22 11:55', 'pass', undefined],
    ['1.210', '05-22 11:54', 'fail', 'held-too-short'],
    ['1.234', '05-22 11:55', 'pass', undefined],
    ['1.235', '05-22 11:55', 'not proven', 'unexplained-rise'],
  ] as const)('to %s MPa at %s', (last, end, verdict, code) => {
    const result = judge(rule, [run(last, end)])
    expect([result.verdict, result.findings[0]?.code]).toEqual([verdict, code])
  })

  it('shows the exact drop of MD-0042 and MD-0041', () => {
    expect(judge(rule, [run('1.210')]).found).toBe('pressure test: drop 0.004 MPa over 75 min')
    expect(
      judge(rule, [
        test([
          ['05-13 09:30', '1.492', '16.8'],
          ['05-13 10:45', '1.489', '16.8'],
        ]),
      ]).found,
    ).toBe('pressure test: drop 0.003 MPa over 75 min')
  })

  it('corrects for warming: 0.1 K warmer must have risen', () => {
    const result = judge(rule, [run('1.210', '05-22 11:55', '13.2')])
    expect(result.verdict).toBe('fail')
    expect(result.working.join(' ')).toMatch(/MPa\/K, expected 1\.2\d{3} MPa/)
    expect(judge(rule, [run('1.210', '05-22 11:55', '13.2')], { design: null })).toMatchObject({
      verdict: 'not proven',
      findings: [{ code: 'design-missing' }],
    })
  })

  it('is not proven without steel, leak statement or test; a leak fails', () => {
    expect(
      judge(rule, [
        test([
          ['05-22 10:40', '1.214'],
          ['05-22 11:55', '1.210'],
        ]),
      ]).findings[0]?.code,
    ).toBe('temperature-missing')
    expect(
      judge(rule, [
        test(
          [
            ['05-22 10:40', '1.214', '13.1'],
            ['05-22 11:55', '1.210', '13.1'],
          ],
          'no',
        ),
      ]),
    ).toMatchObject({ verdict: 'fail', findings: [{ code: 'leak-seen' }] })
    expect(judge(rule, [test([], 'yes', 'not tested, line in service')])).toMatchObject({
      verdict: 'not proven',
      found: 'not tested, line in service',
      findings: [{ code: 'not-tested' }],
    })
    expect(judge(rule, [])).toMatchObject({ verdict: 'not proven', findings: [{ code: 'no-readings' }] })
  })
})
