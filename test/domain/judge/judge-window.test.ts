import { describe, expect, it } from 'vitest'
import { decimal } from '@/lib/domain/decimal'
import { judgeCriterion } from '@/lib/domain/judge/judge-criterion'
import { windowOf } from '@/lib/domain/judge/window-of'
import type { Rule } from '@/lib/domain/specification'
import { at, contextOf, criterion, fact, person, point, recordedAt } from './judge-fixtures'

const PREP: Rule = {
  kind: 'window',
  start: 'prep-finished',
  end: 'first-wrap-resin',
  startPoint: point('05'),
  maxMinutes: decimal('225'),
  pick: 'first',
}
const WATCH: Rule = { kind: 'window', start: 'watch-start', end: 'watch-end', minMinutes: decimal('22'), pick: 'first' }
const CLIMATE: Rule = {
  kind: 'window',
  start: 'climate-taken',
  end: 'first-wrap-resin',
  startPoint: point('07'),
  maxMinutes: decimal('120'),
  pick: 'latest',
}

const prep = (when: string, attempt = 1) => ({
  ...recordedAt(when, { type: 'cleanliness', finishedAt: at(when) }, { point: point('05'), attempt }),
})
const primer = (when: string) => recordedAt(when, { type: 'primer', brushedAt: at(when), brushedBy: person('T1') })
const climate = (when: string) => recordedAt(when, { type: 'climate', takenAt: at(when) }, { point: point('07') })
const judge = (
  rule: Rule,
  records: ReturnType<typeof primer>[],
  more: Parameters<typeof contextOf>[2] = {},
  no = '14',
) => {
  const one = criterion(rule, no)
  const context = contextOf([one], records, more)
  return { result: judgeCriterion(one, context), state: windowOf(one, context) }
}

describe('preparation to first wrap resin, 225 min', () => {
  it.each([
    ['05-27 12:34', 'pass', undefined, 'met'],
    ['05-27 12:35', 'pass', undefined, 'met'],
    ['05-27 12:36', 'fail', 'window-lapsed', 'lapsed'],
  ] as const)('resin at %s', (when, verdict, code, state) => {
    const judged = judge(PREP, [primer(when)], { otherRecords: [prep('05-27 08:50')] })
    expect([judged.result.verdict, judged.result.findings[0]?.code, judged.state?.state]).toEqual([
      verdict,
      code,
      state,
    ])
    expect(judged.state?.endsAt).toBe(at('05-27 12:35'))
  })

  it.each([
    ['05-27 09:00', 'not proven', 'window-running', 'running'],
    ['05-27 12:00', 'not proven', 'window-running', 'warning'],
    ['05-27 12:35', 'not proven', 'window-running', 'warning'],
    ['05-27 12:36', 'fail', 'window-lapsed', 'lapsed'],
  ] as const)('no resin yet at %s', (asOf, verdict, code, state) => {
    const judged = judge(PREP, [], { otherRecords: [prep('05-27 08:50')], asOf: at(asOf) })
    expect([judged.result.verdict, judged.result.findings[0]?.code, judged.state?.state]).toEqual([
      verdict,
      code,
      state,
    ])
  })

  it('has not started without preparation', () => {
    const judged = judge(PREP, [primer('05-27 12:00')])
    expect([judged.result.verdict, judged.result.findings[0]?.code, judged.state?.state]).toEqual([
      'not proven',
      'window-not-started',
      'not started',
    ])
  })

  it('takes the latest attempt of the preparation and the earliest resin', () => {
    const judged = judge(PREP, [primer('05-29 11:30'), primer('05-29 11:00')], {
      otherRecords: [prep('05-27 08:50', 1), prep('05-29 08:00', 2)],
    })
    expect(judged.result).toMatchObject({ verdict: 'pass', found: '180 min', working: ['08:00 to 11:00 = 180 min'] })
  })
})

describe('a known clock error', () => {
  const start = prep('05-27 08:50')
  const end = primer('05-27 12:38')
  it('that would change the outcome is not proven, with both readings', () => {
    const judged = judge(PREP, [end], { otherRecords: [start], clockErrors: { [end.fact ?? fact(0)]: 420_000 } })
    expect(judged.result).toMatchObject({
      verdict: 'not proven',
      found: '228 min',
      findings: [{ code: 'clock-error', found: '228 min', detail: '221 min with the known clock error taken off' }],
    })
    expect(judged.state?.state).toBe('not proven')
  })
  it('shared by both events changes nothing', () => {
    const judged = judge(PREP, [end], {
      otherRecords: [start],
      clockErrors: { [end.fact ?? fact(0)]: 420_000, [start.fact ?? fact(0)]: 420_000 },
    })
    expect(judged.result.findings[0]?.code).toBe('window-lapsed')
  })
})

describe('the watch, 22 min dry', () => {
  const watch = (from: string, to?: string, drip?: string) =>
    recordedAt(from, {
      type: 'arrest-watch',
      startedAt: at(from),
      ...(to ? { endedAt: at(to) } : {}),
      ...(drip ? { dripSeenAt: at(drip) } : {}),
    })
  it.each([
    [watch('05-12 09:36', '05-12 09:58'), 'pass', undefined],
    [watch('05-12 09:36', '05-12 09:57:59'), 'fail', 'window-too-short'],
    [watch('05-12 09:36', '05-12 09:59'), 'pass', undefined],
    [watch('05-27 11:52', '05-27 12:14', '05-27 12:06'), 'fail', 'window-spoiled'],
    [watch('05-12 09:36'), 'not proven', 'window-running'],
  ] as const)('%#', (record, verdict, code) => {
    const { result } = judge(WATCH, [record], {}, '09')
    expect([result.verdict, result.findings[0]?.code]).toEqual([verdict, code])
  })
})

describe('age of the climate, 2 h, latest before the resin', () => {
  it.each([
    ['05-12 11:36', '05-12 11:40', 'pass', '4 min'],
    ['05-12 09:40', '05-12 11:40', 'pass', '120 min'],
    ['05-12 09:39', '05-12 11:40', 'fail', '121 min'],
  ] as const)('%s to %s', (taken, resin, verdict, found) => {
    const { result } = judge(CLIMATE, [primer(resin)], {
      otherRecords: [climate('05-12 08:00'), climate(taken), climate('05-12 11:50')],
    })
    expect(result).toMatchObject({ verdict, found })
  })
  it('a reading taken only after the resin does not count', () => {
    expect(judge(CLIMATE, [primer('05-12 11:40')], { otherRecords: [climate('05-12 11:50')] }).result).toMatchObject({
      verdict: 'not proven',
      findings: [{ code: 'window-not-started' }],
    })
  })
})
