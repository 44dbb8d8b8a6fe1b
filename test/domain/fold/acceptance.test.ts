import { expect, test } from 'vitest'
import type { DecidingActor } from '@/lib/domain/fold/decision'
import { mayAccept } from '@/lib/domain/fold/may-accept'
import { registerRowOf } from '@/lib/domain/fold/register-row'
import { at, person } from './fact-maker'
import { accepted, prepared, smallJob, wrapped } from './small-job'
import { m, planBody, REPAIR, specificationBody } from './small-job-plan'
import { checklist, hardness } from './small-job-records'
import { attemptOf, fold } from './small-job-state'

const INSPECTOR: DecidingActor = { person: person('tobias'), roles: ['inspector'], approve: false }
const NCR = 'nonconformance:NCR-0007'
const dec = (digits: number, scale = 0) => ({ digits, scale })

function closing() {
  const job = smallJob()
  prepared(job)
  wrapped(job)
  job.record('19', 1, '05-13 11:00', checklist)
  job.submit('19', '05-13 11:05')
  return job
}
const raised = (job: ReturnType<typeof smallJob>, when: string) =>
  job.make(NCR, 'nonconformance-raised', when, {
    number: 'NCR-0007',
    title: 'hardness',
    what: 'under the limit',
    requirement: '7.1',
    repair: REPAIR,
    point: '16',
    attempt: 1,
    linked: [],
    evidence: [],
    blocks: ['19'],
    causeClass: 'weather',
  })
function conceded(job: ReturnType<typeof smallJob>, limits: object = {}) {
  raised(job, '05-13 08:00')
  job.make(NCR, 'assessed', '05-13 08:10', { finding: 'cold water' })
  const proposal = job.make(
    NCR,
    'disposition-proposed',
    '05-13 08:20',
    { disposition: 'use as is', what: 'accept', limits, conceded: [{ point: '16', attempt: 1 }] },
    { by: 'ravi' },
  )
  job.make(NCR, 'disposition-approved', '05-13 08:30', { proposal: proposal.id, party: 'engineer' }, { by: 'ravi' })
  return proposal
}

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

test('rule 43: a fact after the last issue makes a revision due, the handover of that issue does not', () => {
  const job = closing()
  accepted(job)
  const issue = job.make('dossier:MD-0099', 'dossier-issued', '05-15 09:00', {
    repair: REPAIR,
    revision: 0,
    purpose: 'final',
    changes: [],
    sha256: 'a'.repeat(64),
    sizeBytes: 10,
    pageCount: 2,
    asOf: at('05-15 08:59'),
    factCount: 40,
    template: 't',
    rules: 'fold 1',
    missing: [],
  })
  job.make('dossier:MD-0099', 'transmitted', '05-15 10:00', {
    issue: issue.id,
    to: 'owner',
    how: 'mail',
    at: at('05-15 10:00'),
  })
  job.record('20', 1, '05-15 11:00', {
    type: 'handover',
    labelNo: 'LBL-1',
    labelFixed: 'yes',
    labelReadable: 'yes',
    registerNo: 'R-1',
    restrictions: [],
    handedAt: at('05-15 11:00'),
    receivedBy: 'owner',
  })
  const served = fold(job.facts, '05-15 12:00')
  expect(served).toMatchObject({
    status: 'in service',
    revisionDue: false,
    issues: [{ transmitted: [{ body: { to: 'owner' } }] }],
  })
  job.make('instrument:HD-03', 'check-made', '05-16 08:00', {
    coverage: 'mid scale',
    reference: m('60', 'ShoreD'),
    read: m('60', 'ShoreD'),
    tolerance: m('2', 'ShoreD'),
    result: 'within',
  })
  expect(fold(job.facts, '05-16 09:00').revisionDue).toBe(false)
  job.make('instrument:HD-03', 'found-wrong', '06-04 10:00', { how: 'reads high' })
  expect(fold(job.facts, '06-04 11:00').revisionDue).toBe(true)
})

test('rule 36: work is judged by the revision in force when performed, and the engineer says whether it stands', () => {
  const job = smallJob()
  prepared(job)
  job.record('16', 1, '05-13 07:25', hardness('05-13 07:25'))
  job.make('specification:QP-SMALL', 'specification-issued', '05-13 08:00', {
    revision: 2,
    issuedOn: '2026-05-13',
    body: specificationBody('78'),
    changes: 'harder',
    approvedBy: 'ravi',
  })
  job.make(REPAIR, 'attempt-opened', '05-13 08:30', { points: ['16'], attempt: 2, reason: 'again' })
  job.record('16', 2, '05-13 09:00', hardness('05-13 09:00'))
  const state = fold(job.facts, '05-13 10:00')
  expect(
    [1, 2]
      .map((attempt) => attemptOf(state, '16', attempt).criteria.find((one) => one.criterion.id === '16-1'))
      .map((one) => [one?.revision, one?.verdict]),
  ).toEqual([
    [1, 'pass'],
    [2, 'fail'],
  ])
  expect(state.specificationRevisions.map((one) => one.body.revision)).toEqual([1, 2])
  const texts = (when: string) =>
    fold(job.facts, when)
      .missing.filter((one) => one.point === '06' && !one.text.startsWith('Certificate'))
      .map((one) => one.text)
  expect(texts('05-13 10:00')).toContain(
    'Performed before revision 2 of QP-SMALL: the engineer has not said whether it stands.',
  )
  job.make(REPAIR, 'stands-or-redo', '05-13 10:10', {
    point: '06',
    revision: 2,
    of: 'specification:QP-SMALL',
    decision: 'stands',
    reason: 'not touched',
  })
  expect(texts('05-13 10:20')).toEqual([])
})

test('rule 36: a revision issued after the acceptance leaves the repair as it was judged', () => {
  const job = closing()
  accepted(job)
  job.make('specification:QP-SMALL', 'specification-issued', '05-25 08:00', {
    revision: 2,
    issuedOn: '2026-05-25',
    body: specificationBody('78'),
    changes: 'harder',
    approvedBy: 'ravi',
  })
  job.make('plan:ITP-SMALL', 'plan-issued', '05-25 08:00', {
    revision: 2,
    issuedOn: '2026-05-25',
    body: { ...planBody(), points: planBody().points.slice(0, 3) },
    changes: 'shorter',
    approvedBy: 'ravi',
  })
  const state = fold(job.facts, '05-26 09:00')
  expect(state).toMatchObject({ status: 'accepted', specification: { revision: 1 }, plan: { revision: 1 } })
  expect(attemptOf(state, '16').verdict).toBe('pass')
  expect(state.missing.some((one) => one.text.includes('whether it stands'))).toBe(false)
})

test('rule 46: everything that the plan asks for and is not there is listed', () => {
  const job = smallJob()
  job.record('05', 1, '05-12 09:04', { type: 'remark', text: 'band chalked' })
  const state = fold(job.facts, '05-12 10:00')
  const listed = state.missing.map((one) => `${one.point ?? ''} ${one.text}`.trim())
  expect(listed).toEqual(
    expect.arrayContaining([
      '02 No record.',
      '05 Record of cleanliness missing: 0 of 1.',
      '05 Signature "measured" by inspector missing.',
      '05 Not released by inspector.',
      'Not accepted.',
      'No design sheet recorded.',
    ]),
  )
  expect(listed.some((text) => text.startsWith('21') || text.startsWith('22'))).toBe(false)
})

test('rule 44 and removal: a disposal is recorded and a removal closes the register row', () => {
  const job = closing()
  accepted(job)
  job.make(REPAIR, 'disposed', '06-01 09:00', { sha256: 'b'.repeat(64), why: 'faces in view', legalHoldChecked: true })
  job.record('22', 1, '07-01 09:00', {
    type: 'removal',
    removedOn: '2026-07-01',
    why: 'line replaced',
    cuts: [{ clock: '3', depthSet: m('2', 'mm') }],
    pipeTouched: 'no',
    priedInHalves: 'yes',
    beneath: 'sound',
    plug: 'in place',
    wall: [],
  })
  expect(fold(job.facts, '06-02 09:00').remarkable.map((one) => one.text)).toContain(
    'Bytes disposed of: faces in view.',
  )
  expect(registerRowOf(fold(job.facts, '07-02 09:00')).status).toBe('removed')
})

test('a hold, a resumption and an abandonment show as the status of the repair', () => {
  const job = smallJob()
  expect(fold(job.facts, '05-12 07:00').status).toBe('planned')
  prepared(job)
  job.make(REPAIR, 'repair-held', '05-12 13:00', { state: 'on hold', reason: 'NCR-0009' })
  job.make(REPAIR, 'repair-held', '05-12 15:00', { state: 'resumed', reason: 'decided' })
  job.make(REPAIR, 'repair-held', '05-12 17:00', { state: 'abandoned', reason: 'line scrapped' })
  expect(
    ['05-12 12:00', '05-12 14:00', '05-12 16:00', '05-12 18:00'].map((when) => fold(job.facts, when).status),
  ).toEqual(['in progress', 'on hold', 'in progress', 'abandoned'])
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
