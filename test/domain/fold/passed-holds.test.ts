import { expect, test } from 'vitest'
import { at } from './fact-maker'
import { prepared, smallJob, wrapped } from './small-job'
import { REPAIR } from './small-job-plan'
import { hardness, tapeRoll } from './small-job-records'
import { attemptOf, fold, pointOf, releaseOf } from './small-job-state'

test('rule 17: rework keeps the failure: the failed attempt stays beside the one that passes', () => {
  const job = smallJob()
  prepared(job)
  wrapped(job)
  job.facts.splice(job.facts.findIndex((fact) => fact.kind === 'recorded' && fact.body.point === '16'))
  job.record('16', 1, '05-13 07:25', hardness('05-13 07:25', ['64', '66', '63', '65']))
  job.submit('16', '05-13 07:30')
  job.make(REPAIR, 'attempt-opened', '05-13 09:00', { points: ['16'], attempt: 2, reason: 'hardness under the limit' })
  job.record('16', 2, '05-14 08:00', hardness('05-14 08:00', ['77', '78', '76', '77']))
  const state = fold(job.facts, '05-14 09:00')
  expect(pointOf(state, '16').attempts.map((one) => [one.attempt, one.verdict, one.state])).toEqual([
    [1, 'fail', 'superseded'],
    [2, 'pass', 'in progress'],
  ])
  expect(
    state.uses.filter((one) => one.of === 'instrument:HD-03' && one.point === '16').map((one) => one.attempt),
  ).toEqual([1, 2])
})

test('rule 15: work begun without a release in force is a passed hold, and a release given later does not cure it', () => {
  const job = smallJob()
  prepared(job)
  job.facts.splice(
    job.facts.findIndex((fact) => fact.kind === 'released' && fact.body.point === '09'),
    1,
  )
  const roll = job.record('14', 1, '05-12 11:35', tapeRoll(), { by: 'maren' })
  job.release('09', '05-12 12:00')
  const state = fold(job.facts, '05-12 12:30')
  expect(attemptOf(state, '14').passedWithoutRelease).toEqual([{ hold: '09', at: at('05-12 11:32:05'), by: roll.id }])
  expect(fold(job.facts, '05-12 11:50').points.find((one) => one.no === '09')?.current.state).toBe(
    'passed without release',
  )
})

test('rule 15: a lapsed preparation that work went past is a passed hold of that attempt only', () => {
  const job = smallJob()
  prepared(job)
  job.record('14', 1, '05-12 12:55', {
    type: 'primer',
    batch: 'batch:PR-357',
    brushedAt: at('05-12 12:55'),
    brushedBy: 'dorrit',
  })
  job.make(REPAIR, 'attempt-opened', '05-12 15:30', {
    points: ['05', '06', '07', '09', '14'],
    attempt: 2,
    reason: 'strip and start over',
  })
  const state = fold(job.facts, '05-12 16:00')
  expect(attemptOf(state, '14', 1).passedWithoutRelease.map((one) => one.hold)).toEqual(['05'])
  expect(attemptOf(state, '14', 2).passedWithoutRelease).toEqual([])
  expect(releaseOf(state, '05')).toMatchObject({ state: 'lapsed', fell: { at: at('05-12 12:43') } })
  expect(attemptOf(state, '05', 2).state).toBe('open')
})
