import { expect, test } from 'vitest'
import { at } from './fact-maker'
import { stateOf } from './release-state-at'
import { accepted, prepared, smallJob, wrapped } from './small-job'
import { m, REPAIR } from './small-job-plan'
import { climate } from './small-job-records'
import { attemptOf, fold, pointOf, releaseOf } from './small-job-state'

test('row wet: a wet surface makes the releases of the table fall, and history says when, why and by whom', () => {
  const job = smallJob()
  prepared(job)
  const event = job.make(
    REPAIR,
    'event-noted',
    '05-12 10:30',
    { event: 'wet', remark: 'drip from the crown' },
    { by: 'maren' },
  )
  const state = fold(job.facts, '05-12 10:31')
  expect(['02', '05', '06', '07', '09'].map((no) => releaseOf(state, no)?.state)).toEqual([
    'valid',
    'lapsed',
    'lapsed',
    'lapsed',
    'lapsed',
  ])
  expect(releaseOf(state, '05')?.fell).toEqual({
    at: event.observedAt,
    cause: 'Surface wet or dew margin lost: drip from the crown',
    by: 'maren',
    fact: event.id,
  })
  expect(stateOf(job, '05-12 10:29', '05')).toBe('valid')
})

test('row wet: a climate record out of range puts the points of the row in question, and a decision answers it', () => {
  const job = smallJob()
  prepared(job)
  const failing = job.record('07', 1, '05-12 11:15', climate('05-12 11:15', '18.2', '81', '16.8'))
  const state = fold(job.facts, '05-12 11:20')
  expect(releaseOf(state, '05')).toMatchObject({
    state: 'in question',
    fell: { cause: 'Climate out of range', fact: failing.id },
  })
  expect(attemptOf(state, '07')).toMatchObject({ state: 'in question', verdict: 'fail' })
  job.make(REPAIR, 'impact-decided', '05-12 11:30', {
    cause: failing.id,
    points: [{ point: '05', attempt: 1 }],
    decision: 'no effect',
    evidence: [],
    reason: 'surface stayed dry',
  })
  expect(stateOf(job, '05-12 11:31', '05')).toBe('valid')
  expect(stateOf(job, '05-12 11:31', '06')).toBe('in question')
})

test('row prep window lapsed: the release falls at the minute the window ends, not when somebody looks', () => {
  const job = smallJob()
  prepared(job)
  expect(stateOf(job, '05-12 12:43', '05')).toBe('valid')
  const state = fold(job.facts, '05-12 15:00')
  expect(releaseOf(state, '05')).toMatchObject({
    state: 'lapsed',
    fell: { at: at('05-12 12:43'), cause: 'Preparation to wrap: window lapsed' },
  })
  expect(attemptOf(state, '05').state).toBe('lapsed')
  expect(pointOf(state, '14').blockedBy).toEqual(['05'])
})

test('row re-leak or weep: before the wrap the watch falls, after it the wrap and what follows', () => {
  const before = smallJob()
  prepared(before)
  before.record('09', 1, '05-12 10:30', { type: 'weep', seenAt: at('05-12 10:30'), place: 'C-6' })
  expect(stateOf(before, '05-12 10:31', '09')).toBe('lapsed')
  expect(stateOf(before, '05-12 10:31', '05')).toBe('valid')
  const after = smallJob()
  prepared(after)
  wrapped(after)
  after.record('16', 1, '05-13 09:00', { type: 'weep', seenAt: at('05-13 09:00'), place: 'C-6' })
  expect(['09', '14', '16'].map((no) => stateOf(after, '05-13 09:01', no))).toEqual(['used', 'lapsed', 'lapsed'])
})

test('row touched surface: only the named area falls, and its re-check heals it', () => {
  const job = smallJob()
  prepared(job)
  job.make(REPAIR, 'event-noted', '05-12 10:10', { event: 'touched', area: 'A to B, 3 o’clock', remark: 'glove print' })
  expect(releaseOf(fold(job.facts, '05-12 10:20'), '05')).toMatchObject({
    state: 'lapsed',
    fell: { cause: 'Surface touched: glove print (A to B, 3 o’clock only)' },
  })
  job.release('05', '05-12 10:25', 'inspector', 1, { kind: 'area', area: 'A to B, 3 o’clock' })
  expect(stateOf(job, '05-12 10:26', '05')).toBe('valid')
})

test('row pressure raised: watch and wrap fall until the engineer decides', () => {
  const job = smallJob()
  prepared(job)
  wrapped(job)
  job.make(REPAIR, 'event-noted', '05-13 08:00', { event: 'pressure-raised', remark: '0.62 MPa' })
  expect(['09', '14', '16'].map((no) => stateOf(job, '05-13 08:01', no))).toEqual(['used', 'lapsed', 'valid'])
})

test('row working time exceeded: the wrap falls', () => {
  const job = smallJob()
  prepared(job)
  wrapped(job)
  job.make(REPAIR, 'event-noted', '05-12 12:00', { event: 'working-time-exceeded', remark: 'roll 1' })
  expect(stateOf(job, '05-12 12:01', '14')).toBe('lapsed')
})

test('row cure interrupted: a cure record that says so makes the hardness release before it fall', () => {
  const job = smallJob()
  prepared(job)
  wrapped(job)
  job.record('15', 2, '05-13 10:00', {
    type: 'cure',
    startedAt: at('05-13 08:00'),
    endedAt: at('05-13 10:00'),
    probes: [{ place: 'top', clock: '12', series: [{ at: at('05-13 09:00'), reading: m('9', 'degC') }] }],
    interrupted: 'yes',
    postCure: 'no',
  })
  expect(stateOf(job, '05-13 09:59', '16')).toBe('valid')
  expect(stateOf(job, '05-13 10:01', '16')).toBe('lapsed')
})

test('row damage after acceptance: hardness and acceptance points fall though they were used', () => {
  const job = smallJob()
  prepared(job)
  wrapped(job)
  accepted(job)
  expect(stateOf(job, '05-13 12:00', '16')).toBe('used')
  job.make(REPAIR, 'event-noted', '05-20 12:00', { event: 'damage', remark: 'struck by a trolley' })
  expect(['14', '16'].map((no) => stateOf(job, '05-20 12:01', no))).toEqual(['used', 'lapsed'])
})

test('row spec or design revised: an engineer says stands or redo, and redo makes the release fall', () => {
  const job = smallJob()
  prepared(job)
  job.make(
    REPAIR,
    'stands-or-redo',
    '05-12 10:30',
    { point: '06', revision: 2, of: 'specification:QP-SMALL', decision: 'redo', reason: 'band narrowed' },
    { by: 'ravi' },
  )
  expect(releaseOf(fold(job.facts, '05-12 10:31'), '06')).toMatchObject({
    state: 'lapsed',
    fell: { by: 'ravi', cause: 'Redo after revision 2: band narrowed' },
  })
})

test('row instrument found invalid later: the point that relied on it is in question, its verdict stays', () => {
  const job = smallJob()
  prepared(job)
  wrapped(job)
  accepted(job)
  const found = job.make('instrument:HD-03', 'found-wrong', '06-04 10:00', {
    error: m('3', 'ShoreD'),
    how: 'reads 3 high at the upper end',
  })
  const state = fold(job.facts, '06-04 11:00')
  expect(attemptOf(state, '16')).toMatchObject({
    state: 'in question',
    verdict: 'pass',
    questions: [{ cause: found.id, causeKind: 'instrument found wrong' }],
  })
  expect(releaseOf(state, '16')?.state).toBe('in question')
  const evidence = job.record('16', 1, '06-06 09:00', { type: 'remark', text: 're-measured with HD-05, min 75' })
  job.make(REPAIR, 'impact-decided', '06-06 10:00', {
    cause: found.id,
    points: [{ point: '16', attempt: 1 }],
    decision: 're-measured',
    evidence: [evidence.id],
    reason: 'full grid within limits',
  })
  const decided = fold(job.facts, '06-06 11:00')
  expect(attemptOf(decided, '16').questions.every((one) => one.decision !== undefined)).toBe(true)
  expect(releaseOf(decided, '16')?.state).toBe('used')
})
