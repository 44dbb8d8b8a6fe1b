import { expect, test } from 'vitest'
import { foldRepair } from '@/lib/domain/fold/fold-repair'
import { registerRowOf } from '@/lib/domain/fold/register-row'
import { overlapsOf } from '@/lib/domain/trace/beside-repairs'
import { impactOf } from '@/lib/domain/trace/impact-of'
import { traceBatch } from '@/lib/domain/trace/trace-batch'
import { traceInstrument, tracePerson } from '@/lib/domain/trace/trace-instrument'
import { at, stream } from '../fold/fact-maker'
import { m } from '../fold/small-job-plan'
import { hardness } from '../fold/small-job-records'
import { BOTH, IDENTITIES, NOW, twoRepairs, usesOf } from './two-repairs'

test('rule 30: a recalled batch reaches every repair and attempt that used it, and what is left in store', () => {
  const { facts, make } = twoRepairs()
  const recall = make('batch:RS-884', 'batch-recalled', '06-02 09:00', { reason: 'wrong viscosity', by: 'maker' })
  const impact = impactOf(recall, facts, usesOf(facts, ...BOTH), IDENTITIES, NOW)
  expect(impact.touched.map((one) => [one.number, one.point, one.attempt, one.rows.length])).toEqual([
    ['MD-0041', '14', 1, 2],
    ['MD-0042', '14', 1, 2],
  ])
  expect(impact.inStore?.inStore).toBe('11.500')
  expect(traceBatch(facts, stream('batch:RS-884'), [], [], NOW)?.batch).toMatchObject({
    isQuarantined: true,
    recalled: { id: recall.id },
  })
})

test('rule 28: an instrument found wrong is searched from its last good full check, across repairs', () => {
  const { facts, make } = twoRepairs()
  make('instrument:HD-03', 'instrument-registered', '04-01 08:00', {
    number: 'HD-03',
    kind: 'durometer',
    measures: ['ShoreD'],
  })
  make('instrument:HD-03', 'certificate-recorded', '04-01 08:00', { certificate: 'C-3291', dueOn: '2026-05-15' })
  make('instrument:HD-03', 'certificate-recorded', '05-16 08:00', {
    certificate: 'C-3777',
    calibratedOn: '2026-05-16',
    dueOn: '2027-05-15',
  })
  const check = (when: string, coverage: string) =>
    make('instrument:HD-03', 'check-made', when, {
      coverage,
      reference: m('80', 'ShoreD'),
      read: m('80', 'ShoreD'),
      tolerance: m('1', 'ShoreD'),
      result: 'within',
    })
  make('repair:MD-0041', 'recorded', '04-20 09:00', { point: '16', attempt: 1, record: hardness('04-20 09:00') })
  const good = check('04-28 08:00', 'full scale')
  make('repair:MD-0041', 'recorded', '05-13 07:25', { point: '16', attempt: 2, record: hardness('05-13 07:25') })
  check('05-20 08:00', 'mid scale')
  make('repair:MD-0042', 'recorded', '05-20 08:10', { point: '16', attempt: 1, record: hardness('05-20 08:10') })
  const wrong = make('instrument:HD-03', 'found-wrong', '06-04 10:00', { how: 'reads 3 high' })
  const impact = impactOf(wrong, facts, usesOf(facts, ...BOTH), IDENTITIES, NOW)
  expect(impact.since).toBe(good.observedAt)
  expect(impact.touched.map((one) => [one.number, one.attempt])).toEqual([
    ['MD-0041', 2],
    ['MD-0042', 1],
  ])
  const trace = traceInstrument(
    facts,
    stream('instrument:HD-03'),
    usesOf(facts, ...BOTH),
    IDENTITIES,
    { from: null, to: null },
    NOW,
  )
  expect(trace?.rows.map((one) => one.certificate?.body.certificate)).toEqual(['C-3291', 'C-3291', 'C-3777'])
})

test('rule 33: a person is traced with the qualifications that ran on each day, a corrected one not among them', () => {
  const { facts, make } = twoRepairs()
  make('person:pavo', 'person-registered', '04-01 08:00', {
    name: 'Pavo Lindmarsh',
    party: 'crew',
    title: 'applicator',
  })
  const wrong = make('person:pavo', 'qualification-recorded', '04-01 08:00', {
    number: 'Q-131',
    task: 'applicator',
    validTo: '2027-05-18',
  })
  make('person:pavo', 'qualification-recorded', '05-28 08:00', {
    number: 'Q-131',
    task: 'applicator',
    validTo: '2026-05-18',
    corrects: wrong.id,
    reason: 'year keyed wrong',
  })
  const trace = tracePerson(
    facts,
    stream('person:pavo'),
    usesOf(facts, ...BOTH),
    IDENTITIES,
    { from: at('05-19 00:00'), to: at('05-20 00:00') },
    NOW,
  )
  expect(trace?.rows.map((one) => [one.number, one.into, one.qualifications.length])).toEqual([['MD-0042', 'M2', 0]])
  const correction = facts.at(-1)
  if (correction?.kind !== 'qualification-recorded') throw new Error('unexpected order')
  expect(
    impactOf(correction, facts, usesOf(facts, ...BOTH), IDENTITIES, NOW).touched.map((one) => [one.number, one.point]),
  ).toEqual([['MD-0042', '14']])
})

test('rule 34: a renamed person keeps the identity that signed', () => {
  const { facts, make } = twoRepairs()
  make('person:pavo', 'person-registered', '04-01 08:00', {
    name: 'Pavo Lindmarsh',
    party: 'crew',
    title: 'applicator',
  })
  make('person:pavo', 'person-renamed', '05-01 08:00', { name: 'Pavo Ashdown', reason: 'married' })
  make('person:pavo', 'person-left', '06-01 08:00', { on: '2026-06-01' })
  const trace = tracePerson(
    facts,
    stream('person:pavo'),
    usesOf(facts, ...BOTH),
    IDENTITIES,
    { from: null, to: null },
    NOW,
  )
  expect(trace?.person).toMatchObject({ id: 'pavo', name: 'Pavo Ashdown' })
  expect(trace?.rows.map((one) => one.role)).toEqual(['mixer'])
})

test('rule 42: repairs whose wraps share a stretch of one line from one datum are told', () => {
  const { facts, make } = twoRepairs()
  const row = (repair: string, totalLength: string) => {
    make(repair, 'recorded', '05-11 09:00', { point: '01', attempt: 1, record: design(totalLength) })
    return registerRowOf(foldRepair(facts, stream(repair), NOW))
  }
  const first = row('repair:MD-0041', '354')
  expect(overlapsOf([first, row('repair:MD-0042', '120')])).toEqual([])
  make('repair:MD-0042', 'recorded', '05-12 09:00', { point: '01', attempt: 1, record: design('325', 1) })
  expect(overlapsOf([first, registerRowOf(foldRepair(facts, stream('repair:MD-0042'), NOW))])).toEqual([
    { a: 'MD-0041', b: 'MD-0042', line: 'L-1', sharedMm: 79.5 },
  ])
})

function design(totalLength: string, revision = 0) {
  const mm = (text: string) => m(text, 'mm')
  return {
    type: 'design',
    sheetNo: 'D-1',
    revision,
    designDiameter: mm('273.0'),
    designWall: mm('9.3'),
    designPressure: m('1.35', 'MPa'),
    designTemp: m('24', 'degC'),
    plies: m('11', 'plies'),
    minThickness: mm('6.8'),
    overlapEachSide: mm('112'),
    taper: mm('35'),
    totalLength: mm(totalLength),
    testPressure: m('1.485', 'MPa'),
    lifeYears: m('10', 'yr'),
    envelope: {
      holeAxialMax: mm('10'),
      holeHoopMax: mm('10'),
      minWallAtBandEdge: mm('5'),
      diameterMin: mm('270'),
      diameterMax: mm('276'),
    },
  }
}
