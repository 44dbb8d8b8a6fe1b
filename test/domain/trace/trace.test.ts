import { expect, test } from 'vitest'
import type { Fact } from '@/lib/domain/facts/fact-kinds'
import { foldRepair } from '@/lib/domain/fold/fold-repair'
import { registerRowOf } from '@/lib/domain/fold/register-row'
import type { Use } from '@/lib/domain/fold/repair-state'
import { overlapsOf } from '@/lib/domain/trace/beside-repairs'
import { impactOf } from '@/lib/domain/trace/impact-of'
import { type RepairIdentity, traceBatch } from '@/lib/domain/trace/trace-batch'
import { traceInstrument, tracePerson } from '@/lib/domain/trace/trace-instrument'
import { at, factMaker, stream } from '../fold/fact-maker'
import { m } from '../fold/small-job-plan'
import { hardness } from '../fold/small-job-records'

const NOW = at('06-10 09:00')

/** Resin mixes of two repairs as the demonstration has them, and filler of a third that is stopped. */
function twoRepairs() {
  const { facts, make } = factMaker()
  const open = (repair: string) =>
    make(repair, 'repair-opened', '05-10 09:00', {
      number: repair.slice(7),
      project: 'project:p',
      line: 'L-1',
      lineTitle: 'line',
      specification: 'specification:s',
      plan: 'plan:p',
      datum: 'W-17',
      stationFromDatum: { digits: repair.endsWith('1') ? 1240 : 1500, scale: 0 },
      clock: '6',
      clockView: 'downstream',
      geometry: 'straight',
      arrest: 'clamp',
      wrap: 'wet lay-up',
    })
  const mix = (repair: string, when: string, a: string, b: string, no: string, by = 'dorrit') =>
    make(repair, 'recorded', when, {
      point: '14',
      attempt: 1,
      record: {
        type: 'resin-mix',
        mixNo: no,
        mixedBy: by,
        partA: [{ batch: 'batch:RS-884', amount: m(a, 'g') }],
        partB: [{ batch: 'batch:HB-2270', amount: m(b, 'g') }],
        proportion: 'by mass',
        startedAt: at(when),
      },
    })
  open('repair:MD-0041')
  open('repair:MD-0042')
  make('batch:RS-884', 'batch-received', '04-20 09:00', {
    number: 'RS-884',
    role: 'resin',
    product: 'laminating resin A',
    expiresOn: '2026-11-30',
    quantity: m('15.000', 'kg'),
    certificate: 'CC-1',
  })
  make('batch:HB-2270', 'batch-received', '04-20 09:00', {
    number: 'HB-2270',
    role: 'hardener',
    product: 'hardener B',
    expiresOn: '2026-10-31',
    quantity: m('4.000', 'kg'),
  })
  mix('repair:MD-0041', '05-12 11:40', '870', '331', 'M1')
  mix('repair:MD-0041', '05-12 11:57', '870', '330', 'M2')
  mix('repair:MD-0042', '05-19 11:18', '760', '289', 'M1')
  mix('repair:MD-0042', '05-19 11:35', '760', '288', 'M2', 'pavo')
  make('batch:RS-884', 'batch-wasted', '05-19 12:00', { quantity: m('0.140', 'kg'), reason: 'left in the pot' })
  make('batch:RS-884', 'batch-counted', '05-29 08:00', { quantity: m('11.500', 'kg') })
  make('repair:MD-0041', 'recorded', '05-12 07:48', {
    point: '03',
    attempt: 1,
    record: {
      type: 'materials',
      lines: [
        {
          batch: 'batch:RS-884',
          role: 'resin',
          packageState: 'sound',
          certificateMatches: 'yes',
          systemQualified: 'yes',
          decision: 'taken',
        },
      ],
    },
  })
  return { facts, make, open }
}
const usesOf = (facts: readonly Fact[], ...repairs: string[]): Use[] =>
  repairs.flatMap((repair) => foldRepair(facts, stream(repair), NOW).uses)
const IDENTITIES: RepairIdentity[] = ['MD-0041', 'MD-0042'].map((number) => ({
  repair: stream(`repair:${number}`),
  number,
  line: 'L-1',
  status: 'in service',
  registerNo: null,
}))
const BOTH = ['repair:MD-0041', 'repair:MD-0042'] as const

test('mass balance: a gap between received and used, wasted and in store is a finding, exact to the gram', () => {
  const { facts } = twoRepairs()
  const trace = traceBatch(facts, stream('batch:RS-884'), usesOf(facts, ...BOTH), IDENTITIES, NOW)
  expect(trace?.balance).toEqual({
    unit: 'kg',
    received: '15.000',
    used: '3.260',
    wasted: '0.140',
    returned: '0.000',
    inStore: '11.500',
    gap: '0.100',
    isFinding: true,
    unweighed: [],
  })
  expect(trace?.uses.map((one) => [one.number, one.into, one.role])).toEqual([
    ['MD-0041', expect.anything(), 'taken'],
    ['MD-0041', 'M1', expect.anything()],
    ['MD-0041', 'M2', expect.anything()],
    ['MD-0042', 'M1', expect.anything()],
    ['MD-0042', 'M2', expect.anything()],
  ])
})

test('mass balance: a batch that nobody counted is not counted, and one counted right has no gap', () => {
  const { facts, make } = twoRepairs()
  expect(traceBatch(facts, stream('batch:HB-2270'), usesOf(facts, ...BOTH), IDENTITIES, NOW)?.balance).toMatchObject({
    used: '1.238',
    inStore: null,
    gap: 'not counted',
    isFinding: false,
  })
  make('batch:RS-884', 'batch-counted', '05-30 08:00', { quantity: m('11.600', 'kg') })
  expect(traceBatch(facts, stream('batch:RS-884'), usesOf(facts, ...BOTH), IDENTITIES, NOW)?.balance).toMatchObject({
    gap: '0.000',
    isFinding: false,
  })
})

test('mass balance: what was returned to the store after the count is in it, an unweighed use is said', () => {
  const { facts, make } = twoRepairs()
  make('batch:RS-884', 'batch-returned', '05-30 08:00', { quantity: m('100', 'g'), from: 'repair:MD-0042' })
  expect(traceBatch(facts, stream('batch:RS-884'), usesOf(facts, ...BOTH), IDENTITIES, NOW)?.balance).toMatchObject({
    inStore: '11.600',
    returned: '0.100',
    gap: '0.000',
  })
  const told = make('repair:MD-0041', 'material-used', '05-12 12:00', {
    point: '14',
    attempt: 1,
    batch: 'batch:RS-884',
    amount: 'a little',
  })
  expect(traceBatch(facts, stream('batch:RS-884'), usesOf(facts, ...BOTH), IDENTITIES, NOW)?.balance).toMatchObject({
    gap: 'not weighed',
    isFinding: true,
    unweighed: [told.id],
  })
})

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
