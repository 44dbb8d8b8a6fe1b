import { expect, test } from 'vitest'
import { correctionWords } from '@/lib/domain/fold/correction-words'
import { PointRecord } from '@/lib/domain/records/record'
import { at } from './fact-maker'
import { m } from './small-job-plan'
import { cleanliness, hardness, tapeRoll } from './small-job-records'

type Change = Parameters<typeof correctionWords>[1]
const record = (body: unknown) => PointRecord.parse(body)

test.each<[string, unknown, Change, string]>([
  [
    'a reading at a mark, with its unit once',
    hardness('05-13 07:25'),
    { path: ['readings', 1, 'reading'], from: m('47', 'ShoreD'), to: m('74', 'ShoreD') },
    'Hardness, A-6: 47 corrected to 74 Shore D',
  ],
  [
    'another unit is said of both',
    hardness('05-13 07:25'),
    { path: ['readings', 1, 'reading'], from: m('47', 'Barcol'), to: m('47', 'ShoreD') },
    'Hardness, A-6: 47 Barcol corrected to 47 Shore D',
  ],
  [
    'a value that is no number',
    cleanliness(),
    { path: ['salts', 2, 'reading'], from: m('9', 'mg/m2'), to: { kind: 'no-access' } },
    'Soluble salts, S3: 9 mg/m² corrected to NA',
  ],
  [
    'a single measure',
    cleanliness(),
    { path: ['preparedLeft'], from: m('105', 'mm'), to: m('150', 'mm') },
    'Prepared, upstream of the leak: 105 corrected to 150 mm',
  ],
  [
    'a time, and a value that was not there',
    cleanliness(),
    { path: ['finishedAt'], from: null, to: at('05-12 08:58') },
    'Preparation finished: nothing corrected to 2026-05-12 08:58 +01:00',
  ],
  [
    'a batch by its number',
    tapeRoll(),
    { path: ['batch'], from: 'batch:WT-2205', to: 'batch:WT-2206' },
    'Batch: WT-2205 corrected to WT-2206',
  ],
])('%s', (_case, body, change, phrase) => {
  expect(correctionWords(record(body), change).phrase).toBe(phrase)
})

test('old and new value apart, persons by name, and a record that is not there', () => {
  const names = { personName: () => 'Dorrit Hale', streamTitle: (stream: string) => stream }
  expect(
    correctionWords(record(tapeRoll()), { path: ['wrappedBy'], from: 'maren', to: 'dorrit' }, names),
  ).toMatchObject({ where: 'Wrapped by', to: 'Dorrit Hale' })
  expect(
    correctionWords(null, { path: ['readings', 1, 'reading'], from: m('47', 'ShoreD'), to: m('74', 'ShoreD') }),
  ).toMatchObject({ where: 'Readings, line 2', from: '47 Shore D', to: '74 Shore D' })
})
