import { expect, test } from 'vitest'
import { stateOf } from './release-state-at'
import { prepared, smallJob, wrapped } from './small-job'
import { REPAIR } from './small-job-plan'
import { permit } from './small-job-records'
import { attemptOf, fold, releaseOf } from './small-job-state'

test('rule 19: a release that was valid when its step was done is used, and a later lapse does not touch it', () => {
  const job = smallJob()
  prepared(job)
  wrapped(job)
  job.make(REPAIR, 'event-noted', '05-12 18:00', { event: 'wet', remark: 'rain on the finished wrap' })
  expect(['05', '06', '09'].map((no) => stateOf(job, '05-14 09:00', no))).toEqual(['used', 'used', 'used'])
})

test('rule 19: a clock that runs out while the step goes on leaves the release that was in force when the step began', () => {
  const job = smallJob()
  prepared(job)
  wrapped(job)
  const first = job.facts.findIndex((fact) => fact.kind === 'recorded' && fact.body.point === '02')
  job.facts.splice(first, 1)
  job.record('02', 1, '05-12 07:20', permit('05-12 11:33'), { by: 'maren' })
  expect(stateOf(job, '05-12 12:00', '02')).toBe('used')
})

test('rule 19: a withdrawal takes even a used release', () => {
  const job = smallJob()
  const { releases } = prepared(job)
  wrapped(job)
  job.make(REPAIR, 'release-withdrawn', '05-13 09:00', {
    release: releases['06']?.id,
    cause: 'wrong gauge',
    reason: 'comparator of another grade',
  })
  expect(releaseOf(fold(job.facts, '05-13 10:00'), '06')).toMatchObject({
    state: 'withdrawn',
    fell: { cause: 'wrong gauge: comparator of another grade' },
  })
  expect(attemptOf(fold(job.facts, '05-13 10:00'), '06').state).toBe('withdrawn')
})

test('rule 22: a stop makes permit and climate fall by the table, and windows run on', () => {
  const job = smallJob()
  prepared(job)
  job.record('07', 1, '05-12 10:30', { type: 'stop', what: 'stopped', reason: 'gas alarm' }, { by: 'dorrit' })
  const state = fold(job.facts, '05-12 11:00')
  expect(state.status).toBe('on hold')
  expect(['02', '05', '07'].map((no) => releaseOf(state, no)?.state)).toEqual(['lapsed', 'valid', 'lapsed'])
  expect(state.windows.find((one) => one.criterion === '14-1')?.state).toBe('running')
  job.record('07', 1, '05-12 11:10', { type: 'stop', what: 'resumed', reason: 'gas clear' })
  expect(fold(job.facts, '05-12 11:11').status).toBe('in progress')
})

test('rule 22: a permit that ended takes its release along until a later permit is released', () => {
  const job = smallJob()
  job.record('02', 1, '05-12 07:20', permit('05-12 12:00'), { by: 'maren' })
  job.submit('02', '05-12 07:21')
  job.release('02', '05-12 07:22', 'crew')
  expect(attemptOf(fold(job.facts, '05-12 12:01'), '02').state).toBe('lapsed')
  job.record('02', 1, '05-12 13:00', permit('05-12 20:00'), { by: 'maren' })
  job.submit('02', '05-12 13:01')
  job.release('02', '05-12 13:02', 'crew')
  expect(attemptOf(fold(job.facts, '05-12 13:03'), '02').releases.map((one) => one.state)).toEqual(['lapsed', 'valid'])
  expect(attemptOf(fold(job.facts, '05-12 13:03'), '02').state).toBe('released')
})
