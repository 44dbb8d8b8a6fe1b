import { describe, expect, it } from 'vitest'
import { decimal } from '@/lib/domain/decimal'
import { measured } from '@/lib/domain/reading'
import type { Rule } from '@/lib/domain/specification'
import { cure, HOLD, judge } from './cure-fixtures'
import { at, recordedAt } from './judge-fixtures'

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
