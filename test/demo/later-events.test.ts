import { describe, expect, test } from 'vitest'
import type { FactKind, FactOf } from '@/lib/domain/facts/fact-kinds'
import { instantOf } from '@/lib/domain/time'
import { impactOf } from '@/lib/domain/trace/impact-of'
import { attemptOf, criterionOf, FACTS, foldDemo, questioned, REPAIRS } from './folded-demo'
import { laterEvents } from './later-events'

const later = laterEvents()
const until = (moment: string) => later.filter((fact) => instantOf(fact.observedAt) <= instantOf(moment))

function only<K extends FactKind>(kind: K): FactOf<K> {
  const found = later.find((fact): fact is FactOf<K> => fact.kind === kind)
  if (!found) throw new Error(`no ${kind} among the later events`)
  return found
}

function impactAt(cause: FactOf<'batch-recalled'> | FactOf<'found-wrong'>, moment: string) {
  const states = REPAIRS.map((number) => foldDemo(number, moment, until(moment)))
  const repairs = states.map((state) => ({
    repair: state.stream,
    number: state.number,
    line: state.opened.body.line,
    status: state.status,
    registerNo: null,
  }))
  return impactOf(
    cause,
    [...FACTS, ...until(moment)],
    states.flatMap((state) => state.uses),
    repairs,
    moment,
  )
}

describe('(a) FP-118 recalled on 06-02', () => {
  const moment = '2026-06-02T12:00:00+01:00'
  const recall = only('batch-recalled')

  test('reaches MD-0041, MD-0044 and attempt 1 of MD-0043, not MD-0042, and the kits left in store', () => {
    const impact = impactAt(recall, moment)
    expect([...new Set(impact.touched.map((one) => `${one.number} ${one.point}/${one.attempt}`))]).toEqual([
      'MD-0041 10/1',
      'MD-0043 10/1',
      'MD-0044 10/1',
    ])
    expect(impact.inStore).toMatchObject({ unit: 'kits', received: '6', gap: 'not counted' })
  })

  test('puts the fillers in question and leaves MD-0042 alone', () => {
    const inQuestion = (number: string) =>
      questioned(foldDemo(number, moment, until(moment)), recall.id).includes('10/1')
    expect(REPAIRS.filter(inQuestion)).toEqual(['MD-0041', 'MD-0043', 'MD-0044'])
    expect(questioned(foldDemo('MD-0042', moment, until(moment)), recall.id)).toEqual([])
  })
})

describe('(b) HD-03 found reading +3 on 06-04', () => {
  const moment = '2026-06-04T12:00:00+01:00'
  const found = only('found-wrong')

  test('reaches the readings since the last good full check: MD-0041, MD-0042 T1 to T3, MD-0044', () => {
    const impact = impactAt(found, moment)
    expect(impact.since).toBe('2026-04-28T15:00:00+01:00')
    expect(impact.touched.map((one) => `${one.number} ${one.point}/${one.attempt}`)).toEqual([
      'MD-0041 16/1',
      'MD-0042 16/1',
      'MD-0042 16/2',
      'MD-0042 16/3',
      'MD-0044 16/1',
    ])
  })

  test.each([
    ['MD-0041', 1, 'lowest 73', 'mean 76.45', 'fail', 'fail'],
    ['MD-0042', 3, 'lowest 73', 'mean 75.40', 'fail', 'fail'],
    ['MD-0044', 1, 'lowest 71', 'mean 73.25', 'fail', 'fail'],
  ] as const)('%s attempt %i corrected: %s, %s', (number, attempt, lowest, mean, each, average) => {
    const state = foldDemo(number, moment, until(moment))
    const corrected = (id: string) =>
      criterionOf(state, id, attempt).questions.find((one) => one.cause === found.id)?.corrected
    expect(corrected('16.each')?.found).toContain(lowest)
    expect(corrected('16.each')?.verdict).toBe(each)
    expect(corrected('16.mean')?.found).toContain(mean)
    expect(corrected('16.mean')?.verdict).toBe(average)
    expect(attemptOf(state, '16', attempt).state).toBe('in question')
  })

  test('what was read with other instruments is not touched: only the hardness, and point 04 where the gauge was taken on', () => {
    expect(REPAIRS.map((number) => questioned(foldDemo(number, moment, until(moment)), found.id))).toEqual([
      ['04/1', '16/1'],
      ['04/1', '16/1', '16/2', '16/3'],
      [],
      ['04/1', '16/1'],
    ])
  })

  test('MD-0041 measured again on 06-06 closes its question; the readings of 05-13 stay as read; MD-0042 stays open', () => {
    const after = '2026-06-06T12:00:00+01:00'
    const state = foldDemo('MD-0041', after, later)
    expect(questioned(state, found.id)).toEqual([])
    expect(criterionOf(state, '16.each', 2)).toMatchObject({ verdict: 'pass', figures: { count: 20, worst: '75' } })
    expect(criterionOf(state, '16.mean', 2)).toMatchObject({ verdict: 'pass', figures: { mean: '78.30' } })
    expect(attemptOf(state, '16', 2).state).toBe('released')
    expect(criterionOf(state, '16.each', 1)).toMatchObject({ verdict: 'pass', figures: { worst: '76' } })
    expect(criterionOf(state, '16.mean', 1).figures.mean).toBe('79.45')
    expect(questioned(foldDemo('MD-0042', after, later), found.id)).toContain('16/3')
  })
})
