import { expect, test } from 'vitest'
import { type FactId, Sha256 } from '@/lib/domain/facts/fact'
import { mayCorrect } from '@/lib/domain/fold/may-correct'
import { at, person, receipt } from './fact-maker'
import { prepared, smallJob, wrapped } from './small-job'
import { m, REPAIR } from './small-job-plan'
import { cleanliness, hardness, watch } from './small-job-records'
import { attemptOf, fold, releaseOf } from './small-job-state'

const texts = (job: ReturnType<typeof smallJob>, when: string) =>
  fold(job.facts, when).remarkable.map((one) => one.text)

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

test('rule 11: readings equal to an earlier grid and impossible speed are listed', () => {
  const job = smallJob()
  const timed = (secondsApart: number) =>
    ['81', '80', '82', '81', '80', '79'].map((text, i) => ({
      mark: `A-${i}`,
      reading: m(text, 'um'),
      at: at(`05-12 09:15:${String(i * secondsApart).padStart(2, '0')}`),
    }))
  const base = { type: 'profile', method: 'stylus', instrument: 'instrument:SP-07', takenAt: at('05-12 09:15') }
  job.record('06', 1, '05-12 09:15', { ...base, readings: timed(1) })
  job.record('06', 2, '05-12 10:15', { ...base, readings: timed(9) })
  const all = texts(job, '05-12 12:00')
  expect(all).toContain('6 readings in 5 s.')
  expect(all).toContain('All 6 readings equal those of point 06 attempt 1.')
  expect(all.filter((text) => text.startsWith('6 readings in'))).toHaveLength(1)
})

test('rule 12: a signature has a meaning and is tied to the digest of what was signed', () => {
  const job = smallJob()
  prepared(job)
  const differs = () => Sha256.parse('0'.repeat(64))
  expect(attemptOf(fold(job.facts, '05-12 12:00'), '05').signatures[0]).toMatchObject({
    state: 'stands',
    fact: { body: { meaning: 'measured', name: 'tobias' } },
  })
  expect(attemptOf(fold(job.facts, '05-12 12:00', { sha256Of: differs }), '05').signatures[0]?.state).toBe('broken')
})

test('rule 20: a release observed before the step and received after it is marked', () => {
  const job = smallJob()
  const { releases } = prepared(job)
  wrapped(job)
  const id = releases['09']?.id as FactId
  expect(
    releaseOf(fold(job.facts, '05-13 09:00', { receipts: { [id]: receipt('05-12 18:00') } }), '09')?.receivedAfterUse,
  ).toBe(true)
  expect(
    releaseOf(fold(job.facts, '05-13 09:00', { receipts: { [id]: receipt('05-12 10:05') } }), '09')?.receivedAfterUse,
  ).toBe(false)
})

test('rule 21: two records of one watch by two devices stand beside each other until a person says which governs', () => {
  const job = smallJob()
  const dry = job.record('09', 1, '05-12 12:14', watch('05-12 11:52', '05-12 12:14'), {
    device: 'phone-1',
    by: 'dorrit',
  })
  const drip = job.record(
    '09',
    1,
    '05-12 12:06',
    {
      type: 'arrest-watch',
      startedAt: at('05-12 11:52'),
      pressure: m('0.40', 'MPa'),
      dripSeenAt: at('05-12 12:06'),
      watchedBy: 'maren',
    },
    { device: 'tablet-2', by: 'maren' },
  )
  const open = fold(job.facts, '05-12 13:00')
  expect(open.conflicts).toMatchObject([{ point: '09', facts: [drip.id, dry.id], resolved: null }])
  expect(open.missing.some((one) => one.text.includes('which governs is not decided'))).toBe(true)
  job.make(REPAIR, 'governs-chosen', '05-12 13:10', {
    point: '09',
    attempt: 1,
    record: drip.id,
    over: [dry.id],
    reason: 'the drip was seen by the lead',
  })
  const decided = fold(job.facts, '05-12 13:20')
  expect(decided.conflicts[0]?.resolved).not.toBeNull()
  expect(attemptOf(decided, '09').records.map((one) => [one.fact.id, one.overruledBy])).toEqual([
    [drip.id, null],
    [dry.id, drip.id],
  ])
  job.make(REPAIR, 'governs-chosen', '05-12 13:30', {
    point: '09',
    attempt: 1,
    record: dry.id,
    over: [drip.id],
    reason: 'the drip was another line',
  })
  expect(attemptOf(fold(job.facts, '05-12 13:40'), '09').records.map((one) => one.overruledBy)).toEqual([dry.id, null])
})

test('rule 23: a photo that is not accepted is kept and a new one is asked for', () => {
  const job = smallJob()
  const photo = job.make(REPAIR, 'photo-attached', '05-12 09:06', {
    point: '05',
    attempt: 1,
    caption: 'prepared band',
    demand: 'band',
    photo: photoBody('b'),
  })
  job.make(REPAIR, 'photo-judged', '05-12 10:00', {
    photo: photo.id,
    decision: 'not accepted',
    reason: 'board not in view',
  })
  expect(attemptOf(fold(job.facts, '05-12 11:00'), '05').photos[0]).toMatchObject({
    judged: { body: { decision: 'not accepted' } },
  })
  expect(texts(job, '05-12 11:00')).toContain('Photo not accepted: board not in view.')
})

test('rule 24: the same bytes twice, near copies across repairs and missing metadata are flagged for a person', () => {
  const job = smallJob()
  const first = job.make(REPAIR, 'photo-attached', '05-12 09:06', {
    point: '05',
    attempt: 1,
    caption: 'band',
    photo: photoBody('c'),
  })
  const second = job.make(REPAIR, 'photo-attached', '05-12 09:16', {
    point: '06',
    attempt: 1,
    caption: 'gauge',
    photo: { ...photoBody('c'), claims: { ...photoBody('c').claims, hasOriginalMetadata: false } },
  })
  const likeness = [
    {
      photo: first.id,
      other: { repair: first.stream, fact: second.id, point: second.body.point },
      kind: 'near copy' as const,
    },
  ]
  const flags = (beside = {}) =>
    attemptOf(fold(job.facts, '05-12 11:00', beside), '05').photos[0]?.flags.map((one) => one.kind)
  expect(flags()).toEqual(['exact copy'])
  expect(flags({ likeness })).toEqual(['near copy'])
  expect(attemptOf(fold(job.facts, '05-12 11:00'), '06').photos[0]?.flags.map((one) => one.kind)).toEqual([
    'exact copy',
    'no original',
  ])
  job.make(REPAIR, 'likeness-judged', '05-12 10:00', {
    photo: first.id,
    other: second.id,
    decision: 'same picture, wrongly used',
    reason: 'one shot sent twice',
  })
  expect(attemptOf(fold(job.facts, '05-12 11:00'), '06').photos[0]?.flags[0]?.decision?.body.decision).toBe(
    'same picture, wrongly used',
  )
})

test('rule 26: a photo that disagrees with the reading is listed', () => {
  const job = smallJob()
  const record = job.record('16', 1, '05-13 07:25', hardness('05-13 07:25'))
  const photo = job.make(REPAIR, 'photo-attached', '05-13 07:26', {
    point: '16',
    attempt: 1,
    caption: 'gauge',
    photo: photoBody('d'),
  })
  job.make(REPAIR, 'photo-disagrees', '05-13 09:00', {
    photo: photo.id,
    record: record.id,
    mark: 'A-3',
    shows: '71',
    reason: 'keyed 77',
  })
  expect(texts(job, '05-13 10:00')).toContain('Photo shows 71, the record says otherwise: keyed 77.')
})

test('rule 27: a transcription says who keeps the paper and whether a second person checked it', () => {
  const job = smallJob()
  job.make(REPAIR, 'recorded', '05-12 09:15', {
    point: '06',
    attempt: 1,
    record: { type: 'remark', text: 'tally sheet 4' },
    transcribed: { keeper: 'plumbline office', place: 'file 12' },
  })
  expect(texts(job, '05-12 11:00')).toContain(
    'Transcribed from paper kept by plumbline office, not checked by a second person.',
  )
})

function photoBody(hash: string) {
  const size = { sha256: hash.repeat(64), sizeBytes: 1000, widthPx: 10, heightPx: 10 }
  return {
    ...size,
    mediaType: 'image/jpeg',
    rendition: size,
    thumb: size,
    claims: { takenAt: null, offset: null, latitude: null, longitude: null, camera: null, hasOriginalMetadata: true },
    measures: {
      sharpness: 1,
      meanLightness: 0.5,
      shareDark: 0,
      shareBright: 0,
      dHash: '0'.repeat(16),
      pHash: '0'.repeat(16),
    },
  }
}
