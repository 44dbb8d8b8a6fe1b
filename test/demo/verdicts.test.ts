import { describe, expect, test } from 'vitest'
import { meanOf, showFraction } from '@/lib/domain/decimal'
import { attemptOf, criterionOf, foldDemo } from './folded-demo'

/** Points of a plan that nobody has come to in May. */
const LATER = new Set(['20', '21', '22'])

describe.each(['MD-0041', 'MD-0044'])('%s, a clean pass', (number) => {
  const state = foldDemo(number)

  test('every point to acceptance passes, is released where it is held, and lacks nothing', () => {
    for (const point of state.points.filter((one) => !LATER.has(one.no))) {
      expect({
        no: point.no,
        verdict: point.current.verdict,
        missing: point.current.missing,
        awaiting: point.awaiting,
        passed: point.current.passedWithoutRelease,
      }).toEqual({ no: point.no, verdict: 'pass', missing: [], awaiting: [], passed: [] })
    }
    expect(state.missing).toEqual([])
    expect(state.nonconformances).toEqual([])
  })

  test('releases before the wrap were used; no release fell', () => {
    const states = state.points.flatMap((point) => point.current.releases.map((one) => one.state))
    expect(states.filter((one) => one !== 'used' && one !== 'superseded' && one !== 'valid')).toEqual([])
  })
})

test.each([
  ['MD-0041', 1, '76', '79.45', 'pass', 'pass'],
  ['MD-0042', 1, '63', '71.50', 'fail', 'fail'],
  ['MD-0042', 2, '69', '74.90', 'fail', 'fail'],
  ['MD-0042', 3, '76', '78.40', 'pass', 'pass'],
  ['MD-0044', 1, '74', '76.25', 'pass', 'pass'],
] as const)('hardness of %s attempt %i: least %s, mean %s', (number, attempt, worst, mean, each, average) => {
  const state = foldDemo(number)
  expect(criterionOf(state, '16.each', attempt)).toMatchObject({ verdict: each, figures: { count: 20, worst } })
  expect(criterionOf(state, '16.mean', attempt)).toMatchObject({ verdict: average, figures: { mean } })
  expect(criterionOf(state, '16.count', attempt).verdict).toBe('pass')
})

test.each([
  ['MD-0041', '6.9', '7.14'],
  ['MD-0042', '5.7', '5.94'],
  ['MD-0044', '3.7', '3.91'],
])('thickness of %s: least %s, mean %s', (number, worst, mean) => {
  const state = foldDemo(number)
  expect(criterionOf(state, '17.thickness')).toMatchObject({ verdict: 'pass', figures: { count: 20, worst } })
  const record = attemptOf(state, '17').records.find((one) => one.record.type === 'thickness')?.record
  const exact =
    record?.type === 'thickness'
      ? meanOf(record.readings.flatMap(({ reading }) => (reading.kind === 'number' ? [reading] : [])))
      : null
  expect(exact && showFraction(exact, 2)).toBe(mean)
})

test('twelve marks of T1 and five of T2 are below 74', () => {
  const state = foldDemo('MD-0042')
  expect(criterionOf(state, '16.each', 1).findings).toHaveLength(12)
  expect(criterionOf(state, '16.each', 2).findings.map((one) => one.mark)).toEqual(['A-6', 'B-6', 'C-6', 'D-6', 'E-6'])
})

test.each([
  ['MD-0041', '10.ratio', '38.0'],
  ['MD-0042', '10.ratio', '38.1'],
  ['MD-0043', '10.ratio', '38.0'],
  ['MD-0044', '10.ratio', '38.0'],
  ['MD-0042', '14.ratio', '37.9'],
  ['MD-0041', '11.over-hole', '7.6'],
  ['MD-0042', '11.over-hole', '7.3'],
  ['MD-0043', '11.over-hole', '7.4'],
  ['MD-0044', '11.over-hole', '7.4'],
  ['MD-0041', '07.margin', '4.9'],
  ['MD-0042', '07.margin', '3.2'],
  ['MD-0043', '07.margin', '0.9'],
  ['MD-0044', '07.margin', '6.4'],
  ['MD-0042', '15.hold', '17.1'],
  ['MD-0041', '15.hold', '16.8'],
  ['MD-0044', '08.hard', '25.7'],
  ['MD-0044', '08.band', '424.4'],
  ['MD-0044', '08.plug-amount', '70.7'],
  ['MD-0044', '14.overlap', '57.3'],
])('%s %s shows %s', (number, id, shown) => {
  const { found, limit, working } = criterionOf(foldDemo(number), id)
  expect([found, limit, ...working].join(' ')).toContain(shown)
})

test('the working time of the rolls of MD-0044: 2.93 min, 2.92 and 2.75 used', () => {
  const result = criterionOf(foldDemo('MD-0044'), '14.working-time')
  expect(result.verdict).toBe('pass')
  for (const shown of ['2.93', '2.92', '2.75'])
    expect([result.found, result.limit, ...result.working].join(' ')).toContain(shown)
})

test('profile means: 86.3, 78.8, 90.1 and 74.5', () => {
  const mean = (number: string) => {
    const record = attemptOf(foldDemo(number), '06').records[0]?.record
    const values =
      record?.type === 'profile'
        ? record.readings.flatMap(({ reading }) => (reading.kind === 'number' ? [reading] : []))
        : []
    const exact = meanOf(values)
    return exact ? showFraction(exact, 1) : null
  }
  expect(['MD-0041', 'MD-0042', 'MD-0043', 'MD-0044'].map(mean)).toEqual(['86.3', '78.8', '90.1', '74.5'])
})

describe('MD-0042, accepted under concession', () => {
  const state = foldDemo('MD-0042')

  test('point 15 stays a fail that is conceded; point 16 shows fail, fail, pass', () => {
    expect(attemptOf(state, '15', 2)).toMatchObject({ verdict: 'fail', conceded: 'nonconformance:NCR-0007' })
    expect(criterionOf(state, '15.hold', 2).found).toContain('12.9')
    expect([1, 2, 3].map((attempt) => attemptOf(state, '16', attempt).verdict)).toEqual(['fail', 'fail', 'pass'])
  })

  test('life 4 years to 2030-05-22, first inspection 2027-02-22', () => {
    expect(state.status).toBe('accepted under concession')
    expect(state.acceptance).toMatchObject({ lifeYears: '4', lifeEndsOn: '2030-05-22', nextInspectionOn: '2027-02-22' })
  })

  test('NCR-0007 is closed with its action done; NCR-0008 awaits the engineer', () => {
    const [first, second] = state.nonconformances
    expect(first).toMatchObject({ number: 'NCR-0007', state: 'closed', isOpen: false })
    expect(first?.actions.map((one) => one.done !== null)).toEqual([true])
    expect(second).toMatchObject({
      number: 'NCR-0008',
      state: 'disposition proposed',
      isOpen: true,
      needsApproval: ['engineer'],
    })
  })

  test('point 14 passed until the qualification was corrected on 05-28, and is in question since', () => {
    const before = foldDemo('MD-0042', '2026-05-28T10:00:00+01:00')
    expect(attemptOf(before, '14')).toMatchObject({ verdict: 'pass', state: 'released' })
    expect(attemptOf(state, '14').state).toBe('in question')
    expect(attemptOf(state, '14').questions.map((one) => one.causeKind)).toEqual(['qualification corrected'])
  })

  test('the first signature of T1 is broken by the correction and given again', () => {
    const signed = attemptOf(state, '16', 1)
      .signatures.filter((one) => one.fact.body.meaning === 'measured')
      .map((one) => one.state)
    expect(signed).toEqual(['broken', 'stands'])
    expect(attemptOf(state, '16', 1).records[0]?.corrections.map((one) => one.body.reason)).toEqual([
      'digits swapped, photo shows 74',
    ])
  })

  test('the test went on without the client after 40 min', () => {
    expect(state.notices.find((one) => one.fact.body.point === '18')?.answer?.body).toMatchObject({
      outcome: 'not attended, proceeded',
      waitedMinutes: { digits: 40, scale: 0 },
    })
    expect(attemptOf(state, '18')).toMatchObject({ verdict: 'pass', state: 'released' })
  })
})
