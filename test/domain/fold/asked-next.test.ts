import { expect, test } from 'vitest'
import { nextAttemptGround } from '@/lib/domain/fold/next-attempt-ground'
import { signaturesAsked } from '@/lib/domain/signing/signatures-asked'
import { prepared, smallJob } from './small-job'
import { attemptOf, fold, pointOf } from './small-job-state'

test('a signature is asked for until one stands over the attempt', () => {
  const job = smallJob()
  prepared(job)
  const state = fold(job.facts, '05-12 12:00')
  const point = pointOf(state, '05')
  const demanding = { plan: { ...point.plan, signatures: [{ meaning: 'measured', role: 'inspector' } as const] } }
  expect(signaturesAsked(demanding, attemptOf(state, '05'))).toEqual([])
  expect(signaturesAsked(demanding, { signatures: [] })).toEqual(demanding.plan.signatures)
  const broken = attemptOf(state, '05').signatures.map((one) => ({ ...one, state: 'broken' as const }))
  expect(signaturesAsked(demanding, { signatures: broken })).toEqual(demanding.plan.signatures)
})

test('an attempt is submitted until a record comes after', () => {
  const job = smallJob()
  prepared(job)
  expect(attemptOf(fold(job.facts, '05-12 12:00'), '05').isSubmitted).toBe(true)
  job.record('05', 1, '05-12 12:10', { type: 'remark', text: 'one corner is dull' })
  expect(attemptOf(fold(job.facts, '05-12 12:20'), '05').isSubmitted).toBe(false)
})

test('the next attempt may take along later points of the same attempt that hold records, and no earlier ones', () => {
  const job = smallJob()
  prepared(job)
  const state = fold(job.facts, '05-12 12:00')
  const worked = state.points.filter((one) => one.current.records.length > 0).map((one) => one.no)
  const ground = nextAttemptGround(state, pointOf(state, '06'), 1)
  expect(ground).toMatchObject({ point: '06', attempt: 2 })
  expect(ground.others.map((one) => one.no)).toEqual(worked.filter((no) => no > '06'))
  expect(ground.others.length).toBeGreaterThan(0)
  expect(nextAttemptGround(state, pointOf(state, '06'), 2).others).toEqual([])
})
