import { describe, expect, it } from 'vitest'
import { decimal } from '@/lib/domain/decimal'
import { judgeCriterion } from '@/lib/domain/judge/judge-criterion'
import { measured } from '@/lib/domain/reading'
import type { RecordOf } from '@/lib/domain/records/record'
import type { Rule } from '@/lib/domain/specification'
import { at, contextOf, criterion, recordedAt, stream } from './judge-fixtures'

const HOLD: Rule = { kind: 'cure-hold', hours: decimal('18'), atLeastTemp: decimal('16'), probeAtColdest: false }
const design = { designDiameter: measured('219.1', 'mm'), designWall: measured('8.2', 'mm') } as RecordOf<'design'>
type Judged = ReturnType<typeof recordedAt>
const judge = (rule: Rule, records: Judged[], more: Parameters<typeof contextOf>[2] = {}) =>
  judgeCriterion(criterion(rule, '15'), contextOf([criterion(rule, '15')], records, { design, ...more }))

const cure = (probes: Record<string, [string, string][]>, more: Partial<RecordOf<'cure'>> = {}) =>
  recordedAt('05-19 12:00', {
    type: 'cure',
    startedAt: at('05-19 12:00'),
    endedAt: at('05-20 06:00'),
    interrupted: 'no',
    postCure: 'no',
    probes: Object.entries(probes).map(([clock, series]) => ({
      place: 'laminate',
      clock,
      series: series.map(([when, temp]) => ({ at: at(when), reading: measured(temp, 'degC') })),
    })),
    ...more,
  })

describe('cure held', () => {
  it.each([
    ['05-20 06:00', '16.0', 'pass', undefined],
    ['05-20 06:01', '17.1', 'pass', undefined],
    ['05-20 05:59', '17.1', 'fail', 'cure-not-held'],
    ['05-20 06:00', '15.9', 'fail', 'cure-not-held'],
  ] as const)('until %s at %s °C', (end, temp, verdict, code) => {
    const result = judge(HOLD, [
      cure({
        3: [
          ['05-19 12:00', '18.0'],
          [end, temp],
        ],
      }),
    ])
    expect([result.verdict, result.findings[0]?.code]).toEqual([verdict, code])
  })

  it('a dip breaks the time; the crossing is interpolated', () => {
    const result = judge(HOLD, [
      cure({
        3: [
          ['05-19 12:00', '14.0'],
          ['05-19 14:00', '18.0'],
          ['05-20 06:00', '18.0'],
        ],
      }),
    ])
    expect(result.working).toEqual(["3 o'clock: longest unbroken 17 h at or above 16 °C"])
  })

  it('MD-0042: met at 3 o’clock until the probe moved to 6 o’clock reads 12.9 °C', () => {
    const first = cure({
      3: [
        ['05-19 12:00', '17.4'],
        ['05-20 00:00', '17.1'],
        ['05-20 06:00', '17.3'],
      ],
    })
    expect(judge(HOLD, [first])).toMatchObject({
      verdict: 'pass',
      found: "coldest 17.1 °C at 3 o'clock",
      figures: { worst: '17.1' },
    })
    const moved = cure({
      6: [
        ['05-20 08:40', '12.9'],
        ['05-20 12:00', '13.2'],
      ],
    })
    const result = judge(HOLD, [first, moved])
    expect(result).toMatchObject({
      verdict: 'fail',
      found: "coldest 12.9 °C at 6 o'clock",
      findings: [{ code: 'cure-not-held', mark: "6 o'clock", found: '12.9 °C', limit: '≥ 18 h at ≥ 16 °C' }],
    })
    expect(
      judge(HOLD, [
        first,
        moved,
        cure(
          {
            6: [
              ['05-21 14:00', '45.0'],
              ['05-21 22:00', '45.0'],
            ],
          },
          { postCure: 'yes' },
        ),
      ]).verdict,
    ).toBe('fail')
    expect(judge(HOLD, [first, cure({ 6: [['05-20 08:40', '12.9']] })])).toMatchObject({
      verdict: 'fail',
      findings: [{ found: '12.9 °C' }],
    })
  })

  it('wants a probe at the coldest clock position where the specification does', () => {
    const rule: Rule = { ...HOLD, probeAtColdest: true }
    const climate = recordedAt('05-19 09:00', {
      type: 'climate',
      takenAt: at('05-19 09:00'),
      steel: [
        { clock: '3', reading: measured('16.4', 'degC') },
        { clock: '6', reading: measured('15.3', 'degC') },
      ],
    })
    const warm: [string, string][] = [
      ['05-19 12:00', '17.0'],
      ['05-20 06:00', '17.0'],
    ]
    expect(judge(rule, [cure({ 3: warm })], { otherRecords: [climate] })).toMatchObject({
      verdict: 'not proven',
      findings: [{ code: 'no-probe-at-coldest', mark: "6 o'clock" }],
    })
    expect(judge(rule, [cure({ 3: warm, 6: warm })], { otherRecords: [climate] }).verdict).toBe('pass')
    expect(judge(rule, [cure({ 3: warm })])).toMatchObject({
      verdict: 'not proven',
      findings: [{ code: 'coldest-unknown' }],
    })
  })

  it('is not proven without a log, on one warm reading, and while it runs', () => {
    expect(judge(HOLD, []).findings[0]?.code).toBe('no-readings')
    expect(judge(HOLD, [cure({ 3: [['05-19 12:00', '17.0']] })])).toMatchObject({
      verdict: 'not proven',
      findings: [{ code: 'log-too-short' }],
    })
    const running = cure({
      3: [
        ['05-19 12:00', '17.0'],
        ['05-19 18:00', '17.0'],
      ],
    })
    const record = { ...running.record }
    if (record.type === 'cure') delete record.endedAt
    expect(judge(HOLD, [{ ...running, record }])).toMatchObject({
      verdict: 'not proven',
      findings: [{ code: 'cure-running' }],
    })
  })
})

describe('equivalent cure', () => {
  const rule: Rule = {
    kind: 'cure-equivalent',
    table: {
      kind: 'interpolated',
      rows: [
        ['10', '1200'],
        ['20', '600'],
        ['40', '200'],
      ].map(([temp, minutes]) => ({ temp: decimal(temp ?? ''), minutes: decimal(minutes ?? '') })),
    },
  }
  it.each([
    ['05-19 22:00', 'pass', undefined],
    ['05-19 21:59', 'fail', 'cure-incomplete'],
  ] as const)('10 h at 20 °C until %s', (end, verdict, code) => {
    const result = judge(rule, [
      cure({
        6: [
          ['05-19 12:00', '20.0'],
          [end, '20.0'],
        ],
      }),
    ])
    expect([result.verdict, result.findings[0]?.code]).toEqual([verdict, code])
  })
  it('refuses what lies outside the table', () => {
    expect(
      judge(rule, [
        cure({
          6: [
            ['05-19 12:00', '9.9'],
            ['05-20 12:00', '20.0'],
          ],
        }),
      ]),
    ).toMatchObject({ verdict: 'not proven', findings: [{ code: 'not-computed', detail: 'outside_table' }] })
  })
})

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
