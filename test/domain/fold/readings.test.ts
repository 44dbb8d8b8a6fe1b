import { expect, test } from 'vitest'
import { registerRowOf } from '@/lib/domain/fold/register-row'
import { parseReading, showReading } from '@/lib/domain/reading'
import { prepared, smallJob } from './small-job'
import { m, REPAIR } from './small-job-plan'
import { hardness, profile } from './small-job-records'
import { attemptOf, fold } from './small-job-state'

const criterionOf = (job: ReturnType<typeof smallJob>, no: string, id: string) =>
  attemptOf(fold(job.facts, '05-14 09:00'), no).criteria.find((one) => one.criterion.id === id)

test('rule 6: below detection, over range, through-wall and no access are values of their own and no numbers', () => {
  expect(['< 3', '> 999', 'TW', 'NA', '-'].map((text) => parseReading(text, 'mg/m2')?.kind)).toEqual([
    'below',
    'above',
    'through-wall',
    'no-access',
    'not-inspected',
  ])
  expect(parseReading('1,234', 'mm')).toBeNull()
  const job = smallJob()
  const record = hardness('05-13 07:25')
  job.record('16', 1, '05-13 07:25', {
    ...record,
    readings: [...record.readings.slice(0, 3), { mark: 'A-12', reading: { kind: 'no-access' } }],
  })
  expect(criterionOf(job, '16', '16-2')).toMatchObject({ verdict: 'not proven', figures: { count: 3 } })
})

test('rule 7: nothing rounds into acceptance: 64.96 against 65 fails and is shown as read', () => {
  const job = smallJob()
  job.record('06', 1, '05-12 09:15', profile(['64.96', '88', '91']))
  const result = criterionOf(job, '06', '06-1')
  expect(result?.verdict).toBe('fail')
  expect(result?.findings[0]?.found).toContain('64.96')
})

test('rule 8: a reading keeps its unit as read, and another unit of another kind is not compared', () => {
  const job = smallJob()
  job.record('06', 1, '05-12 09:15', {
    ...profile([]),
    readings: [
      { mark: 'P1', reading: m('3.4', 'mil') },
      { mark: 'P2', reading: m('74', 'ShoreD') },
    ],
  })
  expect(criterionOf(job, '06', '06-1')?.verdict).not.toBe('pass')
  expect(attemptOf(fold(job.facts, '05-14 09:00'), '06').records[0]?.record).toMatchObject({
    readings: [{ reading: { unit: 'mil', text: '3.4' } }, {}],
  })
})

test('rule 9: extra readings stay visible and a good count does not hide the worst', () => {
  const job = smallJob()
  const record = hardness('05-13 07:25')
  job.record('16', 1, '05-13 07:25', {
    ...record,
    readings: [...record.readings, { mark: 'B-3', reading: m('60', 'ShoreD') }],
  })
  expect(criterionOf(job, '16', '16-2')).toMatchObject({ verdict: 'pass', figures: { count: 5 } })
  expect(criterionOf(job, '16', '16-1')).toMatchObject({ verdict: 'fail', figures: { worstMark: 'B-3' } })
})

test('rule 10: taps are kept under the reading that they gave', () => {
  const job = smallJob()
  const record = hardness('05-13 07:25')
  const [first, ...rest] = record.readings
  job.record('16', 1, '05-13 07:25', {
    ...record,
    readings: [{ ...first, taps: [m('76', 'ShoreD'), m('77', 'ShoreD'), m('78', 'ShoreD')] }, ...rest],
  })
  const [kept] = attemptOf(fold(job.facts, '05-14 09:00'), '16').records
  expect(kept?.record.type === 'hardness' && kept.record.readings[0]?.taps?.map(showReading)).toEqual([
    '76',
    '77',
    '78',
  ])
})

test('rule 25: an annotation is a layer of its own and leaves the photo as it was', () => {
  const job = smallJob()
  const photo = job.attach('05', '05-12 09:06', 'e')
  job.make(REPAIR, 'photo-annotated', '05-12 10:00', { photo: photo.id, shapes: [{ kind: 'ring', x: 0.5, y: 0.5 }] })
  expect(attemptOf(fold(job.facts, '05-12 11:00'), '05').photos[0]?.fact).toEqual(photo)
})

test('rule 35: a place is told from its datum and with the direction of view', () => {
  const job = smallJob()
  prepared(job)
  expect(registerRowOf(fold(job.facts, '05-14 09:00'))).toMatchObject({
    datum: 'valve V-21',
    stationFromDatum: '530',
    clock: '3',
    clockView: 'downstream',
    isCauseActive: null,
    extent: null,
  })
})
