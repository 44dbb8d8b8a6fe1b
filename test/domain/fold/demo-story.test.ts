import { expect, test } from 'vitest'
import type { Fact } from '@/lib/domain/facts/fact-kinds'
import { foldRepair } from '@/lib/domain/fold/fold-repair'
import { registerRowOf } from '@/lib/domain/fold/register-row'
import type { RepairState } from '@/lib/domain/fold/repair-state'
import { impactOf } from '@/lib/domain/trace/impact-of'
import { type RepairIdentity, traceBatch } from '@/lib/domain/trace/trace-batch'
import { demoFacts } from '@/lib/server/demo/demo-facts'
import { at, factMaker, stream } from './fact-maker'
import { m } from './small-job-plan'
import { attemptOf, pointOf, releaseOf } from './small-job-state'

const STORY = demoFacts().facts.map((one) => one.fact)
const NUMBERS = ['MD-0041', 'MD-0042', 'MD-0043', 'MD-0044']
const repair = (number: string, when: string, facts: readonly Fact[] = STORY) =>
  foldRepair(facts, stream(`repair:${number}`), at(when))
const states = (when: string, facts: readonly Fact[] = STORY) => NUMBERS.map((number) => repair(number, when, facts))
const identitiesOf = (list: readonly RepairState[]): RepairIdentity[] =>
  list.map((one) => ({
    repair: one.stream,
    number: one.number,
    line: one.opened.body.line,
    status: one.status,
    registerNo: null,
  }))

test('MD-0041 and MD-0044 pass clean: no hold passed, nothing in question, nothing missing', () => {
  for (const number of ['MD-0041', 'MD-0044']) {
    const state = repair(number, '05-29 08:00')
    expect(
      state.points.flatMap((point) => point.attempts.flatMap((one) => one.passedWithoutRelease)),
      number,
    ).toEqual([])
    expect(state.missing, number).toEqual([])
    expect(
      state.points
        .filter((one) => one.no <= '19')
        .map((one) => one.current.state)
        .filter((one) => one !== 'released'),
      number,
    ).toEqual(['submitted'])
  }
  expect(repair('MD-0041', '05-29 08:00').acceptance).toMatchObject({ lifeYears: '10', nextInspectionOn: '2027-05-13' })
})

test('MD-0042 keeps both failed tests beside the pass, the conceded cure stays a fail, and life is cut', () => {
  const state = repair('MD-0042', '05-29 08:00')
  expect(pointOf(state, '16').attempts.map((one) => one.verdict)).toEqual(['fail', 'fail', 'pass'])
  expect(pointOf(state, '15').current).toMatchObject({ verdict: 'fail', conceded: 'nonconformance:NCR-0007' })
  expect(state).toMatchObject({
    status: 'accepted under concession',
    acceptance: { lifeYears: '4', nextInspectionOn: '2027-02-22', lifeEndsOn: '2030-05-22' },
  })
  expect(registerRowOf(state)).toMatchObject({
    hasConcession: true,
    openNonconformances: ['NCR-0008'],
    inQuestion: true,
  })
  expect(attemptOf(state, '14')).toMatchObject({ state: 'in question', verdict: 'fail' })
  expect(attemptOf(repair('MD-0042', '05-28 10:00'), '14')).toMatchObject({ state: 'released', verdict: 'pass' })
  expect(state.remarkable.map((one) => one.text)).toContain(
    'Corrected by Tobias Wrenfield at point 16 attempt 1: Hardness, C-12: 47 corrected to 74 Shore D (digits swapped, photo shows 74).',
  )
})

test('MD-0043: weep at 11:05, window lapsed at 12:35, resin after it is a passed hold, and two phones contradict each other', () => {
  expect(attemptOf(repair('MD-0043', '05-27 11:00'), '09').state).toBe('released')
  const state = repair('MD-0043', '05-29 08:00')
  expect(releaseOf(state, '05')).toMatchObject({ state: 'lapsed', fell: { at: at('05-27 12:35') } })
  expect(['09', '10', '11'].map((no) => attemptOf(state, no).state)).toEqual(['withdrawn', 'withdrawn', 'withdrawn'])
  expect(attemptOf(repair('MD-0043', '05-27 11:30'), '05').state).toBe('in question')
  expect(attemptOf(state, '14').passedWithoutRelease.map((one) => [one.hold, one.at])).toContainEqual([
    '05',
    at('05-27 12:52'),
  ])
  expect(state.conflicts).toMatchObject([{ point: '09', resolved: null }])
  expect(state.status).toBe('on hold')
  expect(state.specification?.revision).toBe(4)
})

test('the store of the demo: resin RS-884 lacks 0.100 kg, a batch without a count is not counted', () => {
  const all = states('05-29 08:00')
  const uses = all.flatMap((one) => one.uses)
  const balance = (batch: string) =>
    traceBatch(STORY, stream(`batch:${batch}`), uses, identitiesOf(all), at('05-29 08:00'))?.balance
  expect(balance('RS-884')).toMatchObject({
    received: '15.000',
    used: '3.260',
    wasted: '0.140',
    inStore: '11.500',
    gap: '0.100',
    isFinding: true,
  })
  expect(balance('RS-901')).toMatchObject({ gap: 'not counted', isFinding: false })
})

test('filler FP-118 recalled: MD-0041, MD-0044 and the stopped attempt of MD-0043, not MD-0042', () => {
  const { facts, make } = factMaker()
  const recall = make('batch:FP-118', 'batch-recalled', '06-02 09:00', { reason: 'filler stays soft', by: 'maker' })
  const later = [...STORY, ...facts]
  const all = states('06-02 10:00', later)
  const impact = impactOf(
    recall,
    later,
    all.flatMap((one) => one.uses),
    identitiesOf(all),
    at('06-02 10:00'),
  )
  expect([...new Set(impact.touched.map((one) => `${one.number}/${one.attempt}`))]).toEqual([
    'MD-0041/1',
    'MD-0043/1',
    'MD-0044/1',
  ])
  const questioned = all
    .filter((one) =>
      one.points.some((point) =>
        point.attempts.some((attempt) => attempt.questions.some((question) => question.cause === recall.id)),
      ),
    )
    .map((one) => one.number)
  expect(questioned).toEqual(['MD-0041', 'MD-0043', 'MD-0044'])
})

test('durometer HD-03 found reading 3 high: every hardness since the last full check is in question, verdicts as read stay', () => {
  const { facts, make } = factMaker()
  const wrong = make('instrument:HD-03', 'found-wrong', '06-04 10:00', {
    error: m('3', 'ShoreD'),
    how: 'reads high at the upper end',
  })
  const later = [...STORY, ...facts]
  const [first, second] = states('06-04 11:00', later)
  if (!first || !second) throw new Error('no such repairs')
  expect(attemptOf(first, '16')).toMatchObject({ state: 'in question', verdict: 'pass' })
  expect(
    pointOf(second, '16').attempts.map((one) => one.questions.some((question) => question.cause === wrong.id)),
  ).toEqual([true, true, true])
  const corrected = attemptOf(first, '16').criteria.flatMap((one) =>
    one.questions.flatMap((question) => (question.corrected ? [question.corrected.verdict] : [])),
  )
  expect(corrected).toEqual(expect.arrayContaining(['fail']))
  const decision = make('repair:MD-0041', 'impact-decided', '06-06 10:00', {
    cause: wrong.id,
    points: [...new Set(first.points.filter((one) => one.current.questions.length > 0).map((one) => one.no))].map(
      (point) => ({ point, attempt: 1 }),
    ),
    decision: 're-measured',
    evidence: [],
    reason: 'HD-05: least 75, mean 78.30',
  })
  const closed = repair('MD-0041', '06-06 11:00', [...later, decision])
  expect(attemptOf(closed, '16').state).toBe('released')
  expect(registerRowOf(closed).inQuestion).toBe(false)
})
