import { expect, test } from 'vitest'
import type { Fact } from '@/lib/domain/facts/fact-kinds'
import { prepared, smallJob, wrapped } from './small-job'
import { REPAIR } from './small-job-plan'
import { climate } from './small-job-records'
import { fold } from './small-job-state'

/** A repeatable shuffle: a linear congruential generator with a stated seed. */
function shuffled(facts: readonly Fact[], seed: number): Fact[] {
  let state = seed
  const next = (below: number) => {
    state = (state * 1_103_515_245 + 12_345) % 2_147_483_648
    return state % below
  }
  const list = [...facts]
  for (let at = list.length - 1; at > 0; at -= 1) {
    const other = next(at + 1)
    const [a, b] = [list[at], list[other]]
    if (a && b) [list[at], list[other]] = [b, a]
  }
  return list
}

function eventfulJob() {
  const job = smallJob()
  const { clean, releases } = prepared(job)
  job.make(REPAIR, 'corrected', '05-12 09:30', {
    target: clean.id,
    changes: [
      {
        path: ['salts', 1, 'reading'],
        from: clean.body.record.type === 'cleanliness' ? clean.body.record.salts[1]?.reading : null,
        to: { kind: 'number', digits: 12, scale: 0, unit: 'mg/m2', text: '12' },
      },
    ],
    reason: 'digit keyed wrong',
  })
  job.make(REPAIR, 'event-noted', '05-12 10:30', { event: 'wet', remark: 'drip from the crown' })
  job.make(REPAIR, 'release-withdrawn', '05-12 10:31', {
    release: releases['09']?.id,
    cause: 'weep',
    reason: 'drip seen',
  })
  job.record('07', 1, '05-12 10:40', climate('05-12 10:40', '18.0', '86', '16.5'))
  job.record(
    '09',
    1,
    '05-12 09:58',
    { type: 'weep', seenAt: '2026-05-12T09:50:00+01:00', place: 'C-6' },
    { device: 'phone-1', by: 'dorrit' },
  )
  wrapped(job)
  return job
}

test('any permutation of the facts gives the same state', () => {
  const { facts } = eventfulJob()
  const expected = JSON.stringify(fold(facts, '05-14 09:00'))
  for (let seed = 1; seed <= 12; seed += 1)
    expect(JSON.stringify(fold(shuffled(facts, seed), '05-14 09:00'))).toBe(expected)
})

test('a repetition of facts gives the same state', () => {
  const { facts } = eventfulJob()
  const expected = JSON.stringify(fold(facts, '05-14 09:00'))
  expect(JSON.stringify(fold([...shuffled(facts, 7), ...facts], '05-14 09:00'))).toBe(expected)
})

test('facts of other streams that are not cited change nothing', () => {
  const { facts, make } = eventfulJob()
  const expected = JSON.stringify(fold(facts, '05-14 09:00'))
  make('batch:OTHER', 'batch-recalled', '05-13 09:00', { reason: 'not ours', by: 'maker' })
  expect(JSON.stringify(fold(facts, '05-14 09:00'))).toBe(expected)
})
