import { describe, expect, it } from 'vitest'
import { decimal } from '@/lib/domain/decimal'
import type { InstrumentState } from '@/lib/domain/fold/store-states'
import { showFinding } from '@/lib/domain/judge/show-finding'
import { measured } from '@/lib/domain/reading'
import type { Rule } from '@/lib/domain/specification'
import { HARDNESS } from './demo-grids'
import { fact, hardness, recordedAt, stream } from './judge-fixtures'
import { certificate, judge, quarantine, withInstrument } from './trace-fixtures'

describe('instruments in force on the day of use', () => {
  const rule: Rule = { kind: 'instruments-valid' }
  const used = hardness('05-13 07:25', HARDNESS['MD-0041'])
  it.each([
    [{}, 'pass', undefined],
    [{ certificates: [certificate('2026-05-13', '2025-05-13')] }, 'pass', undefined],
    [{ certificates: [certificate('2026-05-12', '2025-05-13')] }, 'fail', 'certificate-lapsed'],
    [
      { certificates: [certificate('2026-05-12', '2025-05-13'), certificate('2027-05-12', '2026-05-14')] },
      'fail',
      'certificate-lapsed',
    ],
    [{ certificates: [certificate('2027-05-12', '2026-05-14')] }, 'not proven', 'certificate-missing'],
    [{ certificates: [certificate('2026-11-30')] }, 'pass', undefined],
    [{ certificates: [] }, 'not proven', 'certificate-missing'],
    [
      {
        certificates: [
          certificate('2026-11-30', '2025-12-01', { range: { min: decimal('0'), max: decimal('80'), unit: 'ShoreD' } }),
        ],
      },
      'fail',
      'outside-certified-range',
    ],
  ] as const)('%#', (changes, verdict, code) => {
    const result = judge(rule, [used], withInstrument(changes as Partial<InstrumentState>))
    expect([result.verdict, result.findings[0]?.code]).toEqual([verdict, code])
  })

  it('fails what was refused at its check, and what is quarantined while it is being keyed', () => {
    const refused = recordedAt('05-12 08:02', {
      type: 'instruments',
      instruments: [
        {
          instrument: stream('instrument:HD-03'),
          certificate: 'C-3291',
          coverage: 'none',
          when: 'before',
          decision: 'refused',
        },
      ],
    })
    expect(judge(rule, [used], { ...withInstrument(), otherRecords: [refused] })).toMatchObject({
      verdict: 'fail',
      findings: [{ code: 'instrument-refused' }],
    })
    expect(judge(rule, [used]).findings[0]?.code).toBe('instrument-unknown')
    expect(judge(rule, []).findings[0]?.code).toBe('no-instrument')
  })

  it.each([
    ['77', 'pass'],
    ['78', 'pass'],
    ['78.1', 'fail'],
    ['75.9', 'fail'],
  ] as const)('checks %s on a reference of 77 ± 1', (read, verdict) => {
    const line = recordedAt('05-12 08:02', {
      type: 'instruments',
      instruments: [
        {
          instrument: stream('instrument:HD-03'),
          certificate: 'C-3291',
          reference: measured('77', 'ShoreD'),
          read: measured(read, 'ShoreD'),
          tolerance: measured('1', 'ShoreD'),
          coverage: 'full scale',
          when: 'before',
          decision: 'taken',
        },
      ],
    })
    const result = judge(rule, [line], withInstrument())
    expect([result.verdict, result.findings[0]?.code]).toEqual([
      verdict,
      verdict === 'fail' ? 'check-outside-tolerance' : undefined,
    ])
  })
})

describe('an instrument in quarantine', () => {
  const rule: Rule = { kind: 'instruments-valid' }
  const used = hardness('05-13 07:25', HARDNESS['MD-0041'])
  it.each([
    ['lifted before its use', quarantine('05-12 09:00', '05-13 07:00'), 'pass'],
    ['lifted at the moment of its use', quarantine('05-12 09:00', '05-13 07:25'), 'pass'],
    ['not yet lifted at its use', quarantine('05-12 09:00', '05-13 07:26'), 'fail'],
    ['standing', quarantine('05-13 07:25', null), 'fail'],
    ['begun after its use', quarantine('05-13 07:26', null), 'pass'],
  ] as const)('%s', (_case, time, verdict) => {
    const result = judge(rule, [used], withInstrument({ isQuarantined: time.to === null, quarantines: [time] }))
    expect([result.verdict, result.findings[0]?.code]).toEqual([
      verdict,
      verdict === 'fail' ? 'instrument-quarantined' : undefined,
    ])
    if (verdict === 'fail') expect(result.findings[0]?.facts).toContain(fact(9400))
  })
  it('says since when and why, also while it is being keyed', () => {
    const changes = { isQuarantined: true, quarantines: [quarantine('05-12 09:00', null)] }
    const [finding] = judge(rule, [{ ...used, fact: null }], withInstrument(changes)).findings
    expect(finding && showFinding(finding)).toBe(
      'HD-03 used 2026-05-13 07:25 +01:00 while in quarantine since 2026-05-12 09:00 +01:00: dropped (7.3).',
    )
  })
})
