import { expect, test } from 'vitest'
import { mayCorrect } from '@/lib/domain/fold/may-correct'
import { at, person } from './fact-maker'
import { texts } from './listed-remarks'
import { prepared, smallJob } from './small-job'
import { m, REPAIR } from './small-job-plan'
import { cleanliness } from './small-job-records'
import { attemptOf, fold } from './small-job-state'

test('rule 1: a late entry keeps both times, tells its story by observed time and is listed', () => {
  const job = smallJob()
  prepared(job)
  job.record(
    '06',
    1,
    '05-12 09:20',
    { type: 'remark', text: 'second replica kept' },
    { enteredAt: '05-13 08:00', late: { reason: 'no device in the area', source: 'paper tally' } },
  )
  const records = attemptOf(fold(job.facts, '05-14 09:00'), '06').records
  expect(records.map((one) => [one.record.type, one.late])).toEqual([
    ['profile', false],
    ['remark', true],
  ])
  expect(texts(job, '05-14 09:00')).toContain(
    'Late entry, keyed 2026-05-13 08:00 +01:00 by tobias from paper tally: no device in the area.',
  )
})

test('rule 1: an entry keyed long after the event counts as late though nobody said so', () => {
  const job = smallJob()
  job.record('02', 1, '05-12 07:20', { type: 'remark', text: 'permit on the board' }, { enteredAt: '05-12 09:20' })
  expect(attemptOf(fold(job.facts, '05-14 09:00', { lateAfterMinutes: 60 }), '02').records[0]?.late).toBe(true)
  expect(attemptOf(fold(job.facts, '05-14 09:00', { lateAfterMinutes: 180 }), '02').records[0]?.late).toBe(false)
})

test('rule 2: a correction supersedes, the old value stays, and the signature over it breaks until signed again', () => {
  const job = smallJob()
  const { clean } = prepared(job)
  const correction = job.make(REPAIR, 'corrected', '05-12 09:10', {
    target: clean.id,
    changes: [{ path: ['salts', 0, 'reading'], from: m('11', 'mg/m2'), to: m('21', 'mg/m2') }],
    reason: 'first digit missed',
  })
  const broken = attemptOf(fold(job.facts, '05-12 09:12'), '05')
  const [record] = broken.records
  expect(record?.record).toMatchObject({ salts: [{ reading: { digits: 21 } }, {}, {}] })
  expect(record?.fact.body.record).toMatchObject({ salts: [{ reading: { digits: 11 } }, {}, {}] })
  expect(record?.corrections.map((one) => one.id)).toEqual([correction.id])
  expect(broken.signatures[0]).toMatchObject({ state: 'broken', brokenBy: correction.id })
  expect(broken.missing).toContain('Signature "measured" by inspector does not stand over 1 of 1 records.')
  job.sign('05', '05-12 09:12:30', [correction.id], 'measured', 'inspector')
  expect(attemptOf(fold(job.facts, '05-12 09:12:40'), '05').records[0]?.signedBy).toEqual([])
  job.sign('05', '05-12 09:13', [clean.id, correction.id], 'measured', 'inspector')
  expect(attemptOf(fold(job.facts, '05-12 09:14'), '05').records[0]?.signedBy).toHaveLength(1)
})

test('rule 2: a correction whose old value is not the present one is kept and shown, not applied', () => {
  const job = smallJob()
  const { clean } = prepared(job)
  job.make(REPAIR, 'corrected', '05-12 09:10', {
    target: clean.id,
    changes: [{ path: ['salts', 0, 'reading', 'digits'], from: 99, to: 1 }],
    reason: 'guess',
  })
  expect(attemptOf(fold(job.facts, '05-12 09:12'), '05').records[0]).toMatchObject({
    corrections: [],
    record: { salts: [{ reading: { digits: 11 } }, {}, {}] },
  })
  expect(texts(job, '05-12 09:12').some((text) => text.startsWith('A correction by tobias was not applied'))).toBe(true)
})

test('rule 3: only own errors are corrected, and a second measurement is a record beside the first', () => {
  const job = smallJob()
  const { clean } = prepared(job)
  const state = fold(job.facts, '05-12 10:00')
  const body = {
    target: clean.id,
    changes: [{ path: ['salts', 0, 'reading', 'text'], from: '11', to: '11.0' }],
    reason: 'as read',
  }
  expect(mayCorrect(state, body, person('dorrit'))).toEqual({
    ok: false,
    error: { code: 'not-own-entry', enteredBy: 'tobias' },
  })
  expect(mayCorrect(state, body, person('tobias'))).toEqual({ ok: true, value: true })
  expect(
    mayCorrect(state, { ...body, changes: [{ path: ['grade'], from: 'Sa 3', to: 'Sa 2½' }] }, person('tobias')),
  ).toMatchObject({ ok: false, error: { code: 'from-differs' } })
  job.record('05', 1, '05-12 09:30', cleanliness(['30', '14', '9']))
  expect(attemptOf(fold(job.facts, '05-12 10:30'), '05')).toMatchObject({ verdict: 'fail', records: [{}, {}] })
})

test('rule 4: a clock known to be wrong is shown and times stay as observed', () => {
  const job = smallJob()
  prepared(job)
  job.make('device:tablet-q', 'clock-checked', '05-12 18:00', { offsetMs: 420_000 })
  const state = fold(job.facts, '05-12 19:00')
  expect(state.remarkable.map((one) => one.text)).toContainEqual(
    expect.stringMatching(/^Clock of tablet-q was 7 min 0 s fast at \d+ entries until 2026-05-12 10:00 \+01:00\.$/),
  )
  expect(attemptOf(state, '05').records[0]?.fact.observedAt).toBe(at('05-12 09:04'))
})

test('rule 4: a window whose outcome changes within the known clock error is not proven', () => {
  const job = smallJob()
  prepared(job)
  job.record(
    '14',
    1,
    '05-12 12:45',
    { type: 'primer', batch: 'batch:PR-357', brushedAt: at('05-12 12:45'), brushedBy: 'dorrit' },
    { device: 'phone-1' },
  )
  job.make('device:phone-1', 'clock-checked', '05-12 18:00', { offsetMs: 420_000 })
  expect(fold(job.facts, '05-12 19:00').windows.find((one) => one.criterion === '14-1')?.state).toBe('not proven')
})
