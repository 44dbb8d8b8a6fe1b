import { expect, test } from 'vitest'
import type { FactId } from '@/lib/domain/facts/fact'
import type { DecidingActor } from '@/lib/domain/fold/decision'
import { mayRelease, mayWaive, mayWithdraw } from '@/lib/domain/fold/may-release'
import { mayMarkNotApplicable, mayOpenAttempt, mayOpenPoint, maySubmit } from '@/lib/domain/fold/may-submit'
import type { Party } from '@/lib/domain/roles'
import { at, person } from './fact-maker'
import { prepared, smallJob, wrapped } from './small-job'
import { planBody, REPAIR } from './small-job-plan'
import { checklist, cleanliness, hardness, profile, tapeRoll } from './small-job-records'
import { attemptOf, fold, pointOf } from './small-job-state'

const INSPECTOR: DecidingActor = { person: person('tobias'), roles: ['inspector'], approve: false }
const LEAD: DecidingActor = { person: person('maren'), roles: ['lead'], approve: false }
const CLIENT: DecidingActor = { person: person('ludmila'), roles: ['client'], approve: false }
const ask = (
  job: ReturnType<typeof smallJob>,
  when: string,
  point: string,
  actor = INSPECTOR,
  party: Party = 'inspector',
  attempt = 1,
) => mayRelease({ state: fold(job.facts, when), point, attempt, party, actor, scope: { kind: 'whole' }, now: at(when) })

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
