import { expect, test } from 'vitest'
import type { FactId } from '@/lib/domain/facts/fact'
import { mayWaive, mayWithdraw } from '@/lib/domain/fold/may-release'
import { mayMarkNotApplicable, mayOpenAttempt, mayOpenPoint, maySubmit } from '@/lib/domain/fold/may-submit'
import { at } from './fact-maker'
import { CLIENT, INSPECTOR, LEAD } from './release-asked'
import { prepared, smallJob, wrapped } from './small-job'
import { REPAIR } from './small-job-plan'
import { checklist, profile } from './small-job-records'
import { attemptOf, fold, pointOf } from './small-job-state'

test('rule 16: a client’s hold is never released by silence, only by the client or a waiver in writing before the step', () => {
  const job = smallJob()
  prepared(job)
  wrapped(job)
  job.record('19', 1, '05-13 11:00', checklist)
  job.submit('19', '05-13 11:05')
  job.release('19', '05-13 11:10')
  const notice = job.make(REPAIR, 'notice-sent', '05-12 08:00', {
    point: '19',
    to: 'ludmila',
    party: 'client',
    how: 'mail',
    sentAt: at('05-12 08:00'),
    for: at('05-13 11:00'),
  })
  job.make(REPAIR, 'notice-answered', '05-13 11:45', {
    notice: notice.id,
    outcome: 'not attended, proceeded',
    clause: '9.2',
  })
  expect(pointOf(fold(job.facts, '05-13 12:00'), '19')).toMatchObject({
    awaiting: ['client'],
    current: { state: 'partly released' },
  })
  expect(pointOf(fold(job.facts, '05-13 12:00'), '20').blockedBy).toEqual(['19'])
  expect(mayWaive(fold(job.facts, '05-13 12:00'), '19', 1, 'client', LEAD)).toEqual({
    ok: false,
    error: { code: 'not-allowed', needs: ['client'] },
  })
  expect(mayWaive(fold(job.facts, '05-13 12:00'), '19', 1, 'client', CLIENT)).toEqual({ ok: true, value: true })
  job.make(
    REPAIR,
    'waived',
    '05-13 12:10',
    { point: '19', attempt: 1, party: 'client', by: 'ludmila', writing: 'letter 4' },
    { by: 'ludmila' },
  )
  expect(pointOf(fold(job.facts, '05-13 12:11'), '19')).toMatchObject({ awaiting: [], current: { state: 'released' } })
})

test('rule 16: an absent witness needs the notice with its outcome, else it is listed as missing', () => {
  const job = smallJob()
  prepared(job)
  const texts = (when: string) =>
    fold(job.facts, when)
      .missing.filter((one) => one.point === '09')
      .map((one) => one.text)
  expect(texts('05-12 10:30')).toEqual(['Witness point of client: no signature and no notice with its outcome.'])
  const notice = job.make(REPAIR, 'notice-sent', '05-11 08:00', {
    point: '09',
    to: 'ludmila',
    party: 'client',
    how: 'mail',
    sentAt: at('05-11 08:00'),
    for: at('05-12 09:30'),
  })
  expect(texts('05-12 10:30')).toContain('Notice to ludmila for 2026-05-12 09:30 +01:00: no outcome recorded.')
  job.make(REPAIR, 'notice-answered', '05-12 10:20', {
    notice: notice.id,
    outcome: 'not attended, proceeded',
    clause: '9.2',
  })
  expect(texts('05-12 10:30')).toEqual([])
})

test('rule 5: not applicable needs the right, the reason and, at a point of the client’s, the client', () => {
  const job = smallJob()
  prepared(job)
  const state = fold(job.facts, '05-12 10:30')
  expect(mayMarkNotApplicable(state, '14', 1, LEAD)).toEqual({
    ok: false,
    error: { code: 'not-allowed', needs: ['inspector', 'engineer'] },
  })
  expect(mayMarkNotApplicable(state, '05', 1, INSPECTOR)).toEqual({ ok: false, error: { code: 'has-records' } })
  expect(mayMarkNotApplicable(state, '19', 1, INSPECTOR)).toEqual({
    ok: false,
    error: { code: 'client-agreement-missing' },
  })
  expect(mayMarkNotApplicable(state, '16', 1, INSPECTOR)).toEqual({ ok: true, value: true })
  job.make(REPAIR, 'marked-not-applicable', '05-12 10:40', { point: '06', attempt: 2, reason: 'no second profile' })
  expect(attemptOf(fold(job.facts, '05-12 10:41'), '06', 2)).toMatchObject({
    state: 'not applicable',
    verdict: 'not proven',
    notApplicable: { body: { reason: 'no second profile' } },
  })
})

test('a point may be opened, submitted and tried again only in order', () => {
  const job = smallJob()
  job.record('06', 1, '05-12 09:15', profile())
  const state = fold(job.facts, '05-12 09:30')
  expect(mayOpenPoint(state, '05')).toEqual({ ok: false, error: { code: 'blocked', by: ['02'] } })
  expect(mayOpenPoint(state, '02')).toEqual({ ok: true, value: true })
  expect(maySubmit(state, '05', 1)).toEqual({
    ok: false,
    error: { code: 'incomplete', missing: ['Record of cleanliness missing: 0 of 1.'] },
  })
  expect(maySubmit(state, '06', 1)).toEqual({ ok: true, value: true })
  expect(mayOpenAttempt(state, ['05', '06'], 1)).toEqual({
    ok: false,
    error: { code: 'attempt-taken', point: '05', latest: 1 },
  })
  expect(mayOpenAttempt(state, ['05', '06'], 2)).toEqual({ ok: true, value: true })
})

test('a release is withdrawn by its party or an inspector, once', () => {
  const job = smallJob()
  const { releases } = prepared(job)
  const id = releases['02']?.id as FactId
  expect(mayWithdraw(fold(job.facts, '05-12 10:30'), id, CLIENT)).toEqual({
    ok: false,
    error: { code: 'not-allowed', needs: ['lead', 'inspector'] },
  })
  expect(mayWithdraw(fold(job.facts, '05-12 10:30'), id, LEAD)).toEqual({ ok: true, value: true })
  job.make(REPAIR, 'release-withdrawn', '05-12 10:31', { release: id, cause: 'permit', reason: 'called back' })
  expect(mayWithdraw(fold(job.facts, '05-12 10:32'), id, LEAD)).toEqual({
    ok: false,
    error: { code: 'release-fallen', state: 'withdrawn' },
  })
})
