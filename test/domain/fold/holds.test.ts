import { expect, test } from 'vitest'
import { at } from './fact-maker'
import { ask, CLIENT, INSPECTOR, LEAD } from './release-asked'
import { prepared, smallJob, wrapped } from './small-job'
import { planBody } from './small-job-plan'
import { cleanliness, hardness, tapeRoll } from './small-job-records'
import { attemptOf, fold, pointOf } from './small-job-state'

test('a release needs the party’s role, a hold of that party, and the current attempt', () => {
  const job = smallJob()
  prepared(job)
  expect(ask(job, '05-12 09:05:30', '05', LEAD)).toEqual({
    ok: false,
    error: { code: 'not-allowed', needs: ['inspector'] },
  })
  expect(ask(job, '05-12 09:05:30', '05', CLIENT, 'client')).toEqual({
    ok: false,
    error: { code: 'not-a-hold', party: 'client' },
  })
  expect(ask(job, '05-12 09:05:30', '55')).toEqual({ ok: false, error: { code: 'point-unknown', point: '55' } })
  expect(ask(job, '05-12 09:05:30', '05', INSPECTOR, 'inspector', 4)).toMatchObject({
    ok: false,
    error: { code: 'attempt-unknown' },
  })
  expect(ask(job, '05-12 09:05:30', '05')).toEqual({ ok: true, value: true })
  expect(ask(job, '05-12 09:09', '05')).toMatchObject({ ok: false, error: { code: 'already-released' } })
})

test('rule 47: a fail, a half-filled record and a missing signature are no pass and refuse the release', () => {
  const job = smallJob()
  prepared(job)
  job.record('05', 1, '05-12 09:04:30', cleanliness(['30', '14', '9']))
  expect(ask(job, '05-12 09:05:30', '05')).toEqual({
    ok: false,
    error: { code: 'verdict-not-pass', verdict: 'fail', criteria: ['05-1'] },
  })
  const unsigned = smallJob()
  prepared(unsigned)
  unsigned.facts.splice(
    unsigned.facts.findIndex((fact) => fact.kind === 'signed'),
    1,
  )
  expect(ask(unsigned, '05-12 09:05:30', '05')).toEqual({
    ok: false,
    error: { code: 'incomplete', missing: ['Signature "measured" by inspector missing.'] },
  })
  const few = smallJob()
  prepared(few)
  wrapped(few)
  few.facts.splice(few.facts.findIndex((fact) => fact.kind === 'recorded' && fact.body.point === '16'))
  few.record('16', 1, '05-13 07:25', hardness('05-13 07:25', ['77', '78', '76']))
  few.submit('16', '05-13 07:30')
  expect(ask(few, '05-13 07:31', '16')).toEqual({
    ok: false,
    error: { code: 'verdict-not-pass', verdict: 'not proven', criteria: ['16-1', '16-2'] },
  })
})

test('rule 13: who did the work does not release it, unless the plan says so', () => {
  const done = (selfRelease: boolean) => {
    const job = smallJob()
    if (selfRelease) {
      const body = planBody()
      job.make('plan:ITP-SMALL', 'plan-issued', '04-21 09:00', {
        revision: 2,
        issuedOn: '2026-04-21',
        body: { ...body, points: body.points.map((one) => (one.no === '14' ? { ...one, selfRelease: true } : one)) },
        changes: 'small crew',
        approvedBy: 'ravi',
      })
    }
    prepared(job)
    job.record('14', 1, '05-12 11:35', { ...tapeRoll(), wrappedBy: 'tobias' })
    job.submit('14', '05-12 11:40')
    return ask(job, '05-12 11:41', '14')
  }
  expect(done(false)).toEqual({ ok: false, error: { code: 'own-work', person: 'tobias' } })
  expect(done(true)).toEqual({ ok: true, value: true })
  const signed = smallJob()
  const { clean } = prepared(signed)
  signed.sign('05', '05-12 09:05', [clean.id], 'performed', 'technician')
  expect(ask(signed, '05-12 09:05:30', '05')).toMatchObject({ ok: false, error: { code: 'own-work' } })
})

test('rule 15: a hold that work went past is not released after the fact', () => {
  const job = smallJob()
  prepared(job)
  job.facts.splice(
    job.facts.findIndex((fact) => fact.kind === 'released' && fact.body.point === '09'),
    1,
  )
  job.record('14', 1, '05-12 11:35', tapeRoll())
  job.submit('14', '05-12 11:40')
  expect(ask(job, '05-12 11:41', '09')).toEqual({
    ok: false,
    error: { code: 'passed-without-release', passed: [{ at: at('05-12 11:32:05'), point: '14' }] },
  })
  expect(ask(job, '05-12 11:41', '14')).toMatchObject({
    ok: false,
    error: { code: 'passed-without-release', passed: [{ point: '09' }] },
  })
})

test('rule 14: a release of an area or up to a step leaves the rest blocked', () => {
  const job = smallJob()
  prepared(job)
  job.facts.splice(
    job.facts.findIndex((fact) => fact.kind === 'released' && fact.body.point === '05'),
    1,
  )
  job.release('05', '05-12 09:08', 'inspector', 1, {
    kind: 'up-to-step',
    step: 'profile and watch, no wrap',
    untilPoint: '14',
  })
  const state = fold(job.facts, '05-12 10:05')
  expect(attemptOf(state, '05').state).toBe('partly released')
  expect(pointOf(state, '06').blockedBy).toEqual([])
  expect(pointOf(state, '14').blockedBy).toEqual(['05'])
  expect(attemptOf(state, '06').passedWithoutRelease).toEqual([])
  job.record('14', 1, '05-12 11:35', tapeRoll())
  expect(attemptOf(fold(job.facts, '05-12 12:00'), '14').passedWithoutRelease.map((one) => one.hold)).toEqual(['05'])
  job.release('05', '05-12 12:10', 'inspector', 1, { kind: 'area', area: 'A to C', marks: ['P1', 'P2'] })
  expect(pointOf(fold(job.facts, '05-12 12:11'), '14').awaiting).toEqual(['inspector'])
})
