import { expect, test } from 'vitest'
import { type FactId, Sha256 } from '@/lib/domain/facts/fact'
import { at, receipt } from './fact-maker'
import { texts } from './listed-remarks'
import { prepared, smallJob, wrapped } from './small-job'
import { m, REPAIR } from './small-job-plan'
import { watch } from './small-job-records'
import { attemptOf, fold, releaseOf } from './small-job-state'

test('rule 11: readings equal to an earlier grid and impossible speed are listed', () => {
  const job = smallJob()
  const timed = (secondsApart: number) =>
    ['81', '80', '82', '81', '80', '79'].map((text, i) => ({
      mark: `A-${i}`,
      reading: m(text, 'um'),
      at: at(`05-12 09:15:${String(i * secondsApart).padStart(2, '0')}`),
    }))
  const base = { type: 'profile', method: 'stylus', instrument: 'instrument:SP-07', takenAt: at('05-12 09:15') }
  job.record('06', 1, '05-12 09:15', { ...base, readings: timed(1) })
  job.record('06', 2, '05-12 10:15', { ...base, readings: timed(9) })
  const all = texts(job, '05-12 12:00')
  expect(all).toContain('6 readings in 5 s.')
  expect(all).toContain('All 6 readings equal those of point 06 attempt 1.')
  expect(all.filter((text) => text.startsWith('6 readings in'))).toHaveLength(1)
})

test('rule 12: a signature has a meaning and is tied to the digest of what was signed', () => {
  const job = smallJob()
  prepared(job)
  const differs = () => Sha256.parse('0'.repeat(64))
  expect(attemptOf(fold(job.facts, '05-12 12:00'), '05').signatures[0]).toMatchObject({
    state: 'stands',
    fact: { body: { meaning: 'measured', name: 'tobias' } },
  })
  expect(attemptOf(fold(job.facts, '05-12 12:00', { sha256Of: differs }), '05').signatures[0]?.state).toBe('broken')
})

test('rule 20: a release observed before the step and received after it is marked', () => {
  const job = smallJob()
  const { releases } = prepared(job)
  wrapped(job)
  const id = releases['09']?.id as FactId
  expect(
    releaseOf(fold(job.facts, '05-13 09:00', { receipts: { [id]: receipt('05-12 18:00') } }), '09')?.receivedAfterUse,
  ).toBe(true)
  expect(
    releaseOf(fold(job.facts, '05-13 09:00', { receipts: { [id]: receipt('05-12 10:05') } }), '09')?.receivedAfterUse,
  ).toBe(false)
})

test('rule 21: two records of one watch by two devices stand beside each other until a person says which governs', () => {
  const job = smallJob()
  const dry = job.record('09', 1, '05-12 12:14', watch('05-12 11:52', '05-12 12:14'), {
    device: 'phone-1',
    by: 'dorrit',
  })
  const drip = job.record(
    '09',
    1,
    '05-12 12:06',
    {
      type: 'arrest-watch',
      startedAt: at('05-12 11:52'),
      pressure: m('0.40', 'MPa'),
      dripSeenAt: at('05-12 12:06'),
      watchedBy: 'maren',
    },
    { device: 'tablet-2', by: 'maren' },
  )
  const open = fold(job.facts, '05-12 13:00')
  expect(open.conflicts).toMatchObject([{ point: '09', facts: [drip.id, dry.id], resolved: null }])
  expect(open.missing.some((one) => one.text.includes('which governs is not decided'))).toBe(true)
  job.make(REPAIR, 'governs-chosen', '05-12 13:10', {
    point: '09',
    attempt: 1,
    record: drip.id,
    over: [dry.id],
    reason: 'the drip was seen by the lead',
  })
  const decided = fold(job.facts, '05-12 13:20')
  expect(decided.conflicts[0]?.resolved).not.toBeNull()
  expect(attemptOf(decided, '09').records.map((one) => [one.fact.id, one.overruledBy])).toEqual([
    [drip.id, null],
    [dry.id, drip.id],
  ])
  job.make(REPAIR, 'governs-chosen', '05-12 13:30', {
    point: '09',
    attempt: 1,
    record: dry.id,
    over: [drip.id],
    reason: 'the drip was another line',
  })
  expect(attemptOf(fold(job.facts, '05-12 13:40'), '09').records.map((one) => one.overruledBy)).toEqual([dry.id, null])
})
