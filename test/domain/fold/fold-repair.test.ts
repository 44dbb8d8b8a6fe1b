import { expect, test } from 'vitest'
import { accepted, prepared, smallJob, wrapped } from './small-job'
import { attemptOf, fold, pointOf, releaseOf } from './small-job-state'

test('a job released point by point ends accepted with every release used', () => {
  const job = smallJob()
  prepared(job)
  wrapped(job)
  const before = fold(job.facts, '05-13 08:00')
  expect(before.points.slice(0, 8).map((one) => [one.no, one.current.state])).toEqual([
    ['02', 'released'],
    ['05', 'released'],
    ['06', 'released'],
    ['07', 'released'],
    ['09', 'released'],
    ['14', 'released'],
    ['15', 'submitted'],
    ['16', 'released'],
  ])
  expect(releaseOf(before, '05')?.state).toBe('used')
  expect(releaseOf(before, '16')?.state).toBe('valid')
  accepted(job)
  const after = fold(job.facts, '05-13 12:00')
  expect(after.status).toBe('accepted')
  expect(releaseOf(after, '16')?.state).toBe('used')
  expect(after.acceptance).toMatchObject({
    lifeYears: '5',
    lifeEndsOn: '2031-05-13',
    nextInspectionOn: '2027-05-14',
    isOverdue: false,
  })
})

test('a point is closed while an earlier one is not released, and open after', () => {
  const job = smallJob()
  job.record('02', 1, '05-12 07:20', { type: 'remark', text: 'waiting for the permit' })
  expect(attemptOf(fold(job.facts, '05-12 08:00'), '05').state).toBe('closed')
  expect(pointOf(fold(job.facts, '05-12 08:00'), '05').blockedBy).toEqual(['02'])
  prepared(job)
  expect(pointOf(fold(job.facts, '05-12 07:30'), '05')).toMatchObject({ blockedBy: [], current: { state: 'open' } })
  expect(pointOf(fold(job.facts, '05-12 07:30'), '14').blockedBy).toEqual(['05', '06', '07', '09'])
})

test('facts observed after the moment asked are not seen', () => {
  const job = smallJob()
  prepared(job)
  const state = fold(job.facts, '05-12 09:07')
  expect(attemptOf(state, '05').state).toBe('submitted')
  expect(attemptOf(state, '06').records).toEqual([])
  expect(() => fold(job.facts, '05-10 09:00')).toThrow(RangeError)
})
