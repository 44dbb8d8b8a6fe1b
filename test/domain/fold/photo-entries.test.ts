import { expect, test } from 'vitest'
import { texts } from './listed-remarks'
import { photoBody } from './photo-body'
import { smallJob } from './small-job'
import { REPAIR } from './small-job-plan'
import { hardness } from './small-job-records'
import { attemptOf, fold } from './small-job-state'

test('rule 23: a photo that is not accepted is kept and a new one is asked for', () => {
  const job = smallJob()
  const photo = job.attach('05', '05-12 09:06', 'b', { demand: 'band' })
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
  const first = job.attach('05', '05-12 09:06', 'c')
  const second = job.attach('06', '05-12 09:16', 'c', {
    photo: photoBody('c', { claims: { hasOriginalMetadata: false } }),
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
  expect(texts(job, '05-12 11:00')).toEqual(
    expect.arrayContaining([
      'Photo of point 05: exact copy of a later one at MD-0099, point 06.',
      'Photo of point 06: exact copy of an earlier one at MD-0099, point 05; not yet decided.',
    ]),
  )
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
  const photo = job.attach('16', '05-13 07:26', 'd')
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
    'At point 06, observed by tobias, entered 2026-05-12 09:15 +01:00 by tobias, transcribed from paper, kept by plumbline office, file 12; no scan; not checked by a second person.',
  )
})
