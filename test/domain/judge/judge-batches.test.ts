import { describe, expect, it } from 'vitest'
import type { BatchState } from '@/lib/domain/fold/store-states'
import { showFinding } from '@/lib/domain/judge/show-finding'
import type { Rule } from '@/lib/domain/specification'
import { at, fact, person, recordedAt, stream } from './judge-fixtures'
import { envelope, judge, quarantine } from './trace-fixtures'

describe('batches in date at use', () => {
  const rule: Rule = { kind: 'batches-valid' }
  const batch = (changes: Partial<BatchState> = {}): BatchState => ({
    stream: stream('batch:PR-357'),
    number: 'PR-357',
    received: { number: 'PR-357', role: 'primer', product: 'primer', expiresOn: '2026-06-30', quantity: null },
    expiresOn: '2026-06-30',
    isQuarantined: false,
    quarantines: [],
    recalled: null,
    ...changes,
  })
  const primer = (when: string) =>
    recordedAt(when, { type: 'primer', batch: stream('batch:PR-357'), brushedAt: at(when), brushedBy: person('T1') })
  const recall = (when: string) =>
    envelope('batch-recalled', 9300, 'batch:PR-357', when, { reason: 'maker recall', by: 'maker' })
  it.each([
    ['06-30 23:59', {}, 'pass', undefined],
    ['07-01 00:00', {}, 'fail', 'batch-expired'],
    ['05-12 11:40', { expiresOn: null }, 'pass', undefined],
    ['05-12 11:40', { recalled: recall('05-12 11:40') }, 'fail', 'batch-recalled'],
    ['05-12 11:40', { recalled: recall('06-02 09:00'), isQuarantined: true }, 'pass', undefined],
  ] as const)('%s %#', (when, changes, verdict, code) => {
    const result = judge(rule, [primer(when)], { batches: { [stream('batch:PR-357')]: batch(changes) } })
    expect([result.verdict, result.findings[0]?.code]).toEqual([verdict, code])
  })
  it('asks a question when the recall came after the use', () => {
    const result = judge(rule, [primer('05-12 11:40')], {
      batches: { [stream('batch:PR-357')]: batch({ recalled: recall('06-02 09:00'), isQuarantined: true }) },
    })
    expect(result.questions).toEqual([
      { cause: fact(9300), causeKind: 'batch recalled', stream: stream('batch:PR-357'), since: at('06-02 09:00') },
    ])
  })
  it('judges a material looked at beforehand on the day of its planned use, and not a refused one', () => {
    const line = (decision: 'taken' | 'refused', plannedUseOn: string) =>
      recordedAt('06-29 08:00', {
        type: 'materials',
        plannedUseOn,
        lines: [
          {
            batch: stream('batch:PR-357'),
            role: 'primer',
            packageState: 'sound',
            certificateMatches: 'yes',
            systemQualified: 'yes',
            decision,
          },
        ],
      })
    const batches = { [stream('batch:PR-357')]: batch() }
    expect(judge(rule, [line('taken', '2026-06-30')], { batches }).verdict).toBe('pass')
    expect(judge(rule, [line('taken', '2026-07-01')], { batches }).findings[0]?.code).toBe('batch-expired')
    expect(judge(rule, [line('refused', '2026-07-01')], { batches }).findings[0]?.code).toBe('no-batch')
  })
  it.each([
    ['lifted before', quarantine('05-10 09:00', '05-12 11:00'), 'pass'],
    ['standing since before', quarantine('05-10 09:00', null), 'fail'],
    ['begun after', quarantine('05-12 11:41', null), 'pass'],
  ] as const)('in quarantine, %s its use', (_case, time, verdict) => {
    const quarantined = batch({ isQuarantined: time.to === null, quarantines: [time] })
    for (const use of [primer('05-12 11:40'), { ...primer('05-12 11:40'), fact: null }]) {
      const result = judge(rule, [use], { batches: { [stream('batch:PR-357')]: quarantined } })
      expect(result.verdict).toBe(verdict)
      expect(result.findings.map(showFinding)).toEqual(
        verdict === 'pass'
          ? []
          : [
              'Batch PR-357 used 2026-05-12 11:40 +01:00 while in quarantine since 2026-05-10 09:00 +01:00: dropped (7.3).',
            ],
      )
    }
  })
  it('does not know an unknown batch', () => {
    expect(judge(rule, [primer('05-12 11:40')]).findings[0]?.code).toBe('batch-unknown')
  })
})
