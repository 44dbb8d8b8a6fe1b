import { expect, test } from 'vitest'
import { closing } from './closing-job'
import { at } from './fact-maker'
import { accepted, prepared, smallJob } from './small-job'
import { m, planBody, REPAIR, specificationBody } from './small-job-plan'
import { hardness } from './small-job-records'
import { attemptOf, fold } from './small-job-state'

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
