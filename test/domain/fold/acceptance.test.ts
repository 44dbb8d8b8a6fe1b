import { expect, test } from 'vitest'
import { mayAccept } from '@/lib/domain/fold/may-accept'
import { registerRowOf } from '@/lib/domain/fold/register-row'
import { closing, conceded, dec, INSPECTOR, NCR, raised } from './closing-job'
import { accepted, prepared, smallJob, wrapped } from './small-job'
import { REPAIR } from './small-job-plan'
import { checklist, hardness } from './small-job-records'
import { attemptOf, fold } from './small-job-state'

test('a repair is accepted when every point is released, used in time or submitted with a pass', () => {
  const job = closing()
  expect(mayAccept(fold(job.facts, '05-13 11:10'), 'accepted', undefined, INSPECTOR)).toEqual({ ok: true, value: true })
  expect(
    mayAccept(fold(job.facts, '05-13 11:10'), 'accepted', undefined, { ...INSPECTOR, roles: ['lead'] }),
  ).toMatchObject({ ok: false, error: { code: 'not-allowed' } })
  expect(mayAccept(fold(job.facts, '05-13 07:00'), 'accepted', undefined, INSPECTOR)).toEqual({
    ok: false,
    error: { code: 'not-released', points: ['16', '19'] },
  })
})

test('an open nonconformance blocks acceptance unless engineer and client say that it does not', () => {
  const job = closing()
  raised(job, '05-13 09:00')
  expect(mayAccept(fold(job.facts, '05-13 11:10'), 'accepted', undefined, INSPECTOR)).toEqual({
    ok: false,
    error: { code: 'nonconformance-open', numbers: ['NCR-0007'] },
  })
  job.make(NCR, 'does-not-block', '05-13 09:10', { party: 'engineer', reason: 'paper only' })
  expect(mayAccept(fold(job.facts, '05-13 11:10'), 'accepted', undefined, INSPECTOR).ok).toBe(false)
  job.make(NCR, 'does-not-block', '05-13 09:20', { party: 'client', reason: 'agreed' })
  expect(mayAccept(fold(job.facts, '05-13 11:10'), 'accepted', undefined, INSPECTOR)).toEqual({ ok: true, value: true })
})

test('rule 38: a concession stands beside the fail, needs engineer and client, and never flips the reading', () => {
  const job = smallJob()
  prepared(job)
  wrapped(job)
  job.facts.splice(job.facts.findIndex((fact) => fact.kind === 'recorded' && fact.body.point === '16'))
  job.record('16', 1, '05-13 07:25', hardness('05-13 07:25', ['64', '66', '63', '65']))
  job.submit('16', '05-13 07:30')
  const proposal = conceded(job)
  expect(attemptOf(fold(job.facts, '05-13 08:40'), '16').conceded).toBeNull()
  job.make(
    NCR,
    'disposition-approved',
    '05-13 09:00',
    { proposal: proposal.id, party: 'client', writing: 'letter 7' },
    { by: 'ludmila' },
  )
  job.make(NCR, 'verified', '05-13 09:30', { how: 'limits in the register', evidence: [] }, { by: 'ysolde' })
  job.make(NCR, 'closed', '05-13 09:40', {}, { by: 'ysolde' })
  job.record('19', 1, '05-13 11:00', checklist)
  job.submit('19', '05-13 11:05')
  const state = fold(job.facts, '05-13 11:10')
  expect(attemptOf(state, '16')).toMatchObject({ verdict: 'fail', conceded: NCR })
  expect(mayAccept(state, 'accepted', undefined, INSPECTOR)).toEqual({
    ok: false,
    error: { code: 'concession-not-stated', points: ['16'] },
  })
  expect(mayAccept(state, 'accepted under concession', 'nonconformance:NCR-0001', INSPECTOR)).toEqual({
    ok: false,
    error: { code: 'concession-unknown' },
  })
  expect(mayAccept(state, 'accepted under concession', NCR, INSPECTOR)).toEqual({ ok: true, value: true })
  job.make(REPAIR, 'accepted', '05-13 11:20', {
    kind: 'accepted under concession',
    lifeYears: dec(4),
    lifeFrom: '2026-05-13',
    nextInspectionOn: '2027-02-22',
    restrictions: [],
    concession: NCR,
    conditions: [],
    heads: [],
  })
  const after = fold(job.facts, '05-13 12:00')
  expect(after.status).toBe('accepted under concession')
  expect(registerRowOf(after)).toMatchObject({
    hasConcession: true,
    lifeYears: '4',
    nextInspectionOn: '2027-02-22',
    lifeEndsOn: '2030-05-13',
  })
})

test('rule 39: a condition of acceptance stays open in the register until it is discharged', () => {
  const job = closing()
  const acceptance = accepted(job, 'accepted on condition', {
    conditions: [{ text: 'paint the ends', owner: 'maren', dueOn: '2026-06-01' }],
  })
  expect(registerRowOf(fold(job.facts, '05-14 09:00')).openConditions).toBe(1)
  job.make(REPAIR, 'condition-discharged', '05-20 09:00', {
    acceptance: acceptance.id,
    condition: 0,
    evidence: 'photo',
  })
  expect(registerRowOf(fold(job.facts, '05-21 09:00')).openConditions).toBe(0)
})

test('rule 41: a missed inspection is overdue, an early one does not move the date, limits only shorten it', () => {
  const job = closing()
  accepted(job, 'accepted', { nextInspectionOn: '2026-08-01' })
  job.record('21', 1, '07-01 09:00', inService('2026-07-01'))
  expect(fold(job.facts, '08-01 23:00').status).toBe('accepted')
  expect(fold(job.facts, '08-02 09:00')).toMatchObject({ status: 'overdue', acceptance: { isOverdue: true } })
  job.record('21', 1, '08-03 09:00', inService('2026-08-03'))
  expect(fold(job.facts, '08-04 09:00').acceptance?.isOverdue).toBe(false)
  const limited = closing()
  accepted(limited)
  const proposal = conceded(limited, { lifeYears: dec(4), nextInspectionOn: '2027-02-22' })
  limited.make(
    NCR,
    'disposition-approved',
    '05-13 09:00',
    { proposal: proposal.id, party: 'client' },
    { by: 'ludmila' },
  )
  expect(fold(limited.facts, '05-14 09:00').acceptance).toMatchObject({
    lifeYears: '4',
    nextInspectionOn: '2027-02-22',
    lifeEndsOn: '2030-05-13',
  })
})

function inService(inspectedOn: string) {
  return {
    type: 'in-service',
    inspectedOn,
    inspector: 'jonah',
    edges: 'sound',
    tap: 'sound',
    weep: 'no',
    colourChange: 'no',
    impact: 'no',
    wallBeyondEnds: [],
    result: 'no change',
  }
}
