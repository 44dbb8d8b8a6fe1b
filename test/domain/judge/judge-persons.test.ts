import { describe, expect, it } from 'vitest'
import type { FactOf } from '@/lib/domain/facts/fact-kinds'
import type { PersonState } from '@/lib/domain/fold/store-states'
import type { Rule } from '@/lib/domain/specification'
import { at, fact, person, recordedAt, stream } from './judge-fixtures'
import { envelope, judge } from './trace-fixtures'

describe('persons qualified on the day', () => {
  const rule: Rule = { kind: 'persons-qualified' }
  type Body = FactOf<'qualification-recorded'>['body']
  const qualification = (no: number, when: string, validTo: string, more: Partial<Body> = {}) =>
    envelope('qualification-recorded', no, 'person:T2', when, {
      number: 'Q-131',
      task: 'applicator',
      geometries: ['straight'],
      validTo,
      ...more,
    })
  const someone = (name: string, qualifications: PersonState['qualifications']): PersonState => ({
    stream: stream(`person:${name}`),
    id: person(name),
    name: name === 'T2' ? 'Pavo Lindmarsh' : name,
    title: '',
    party: 'crew',
    qualifications,
  })
  const mix = (supervised?: string) =>
    recordedAt('05-19 11:35', {
      type: 'resin-mix',
      mixNo: 'M2',
      mixedBy: person('T2'),
      startedAt: at('05-19 11:35'),
      ...(supervised ? { supervisedBy: person(supervised) } : {}),
    })
  const people = (...list: PersonState[]) => ({ persons: Object.fromEntries(list.map((one) => [one.stream, one])) })
  const first = qualification(9401, '03-01 08:00', '2027-05-18')
  const corrected = qualification(9402, '05-28 10:00', '2026-05-18', {
    corrects: fact(9401),
    reason: 'year keyed wrong',
  })
  const renewed = qualification(9403, '05-30 10:00', '2028-05-30', { number: 'Q-131 B' })

  it('MD-0042: passed on the day, fails by the corrected validity and is in question; a renewal cures nothing', () => {
    expect(judge(rule, [mix()], { ...people(someone('T2', [first])), releasedAt: at('05-19 12:30') })).toMatchObject({
      verdict: 'pass',
      questions: [],
    })
    const result = judge(rule, [mix()], {
      ...people(someone('T2', [first, corrected, renewed])),
      releasedAt: at('05-19 12:30'),
    })
    expect(result).toMatchObject({
      verdict: 'fail',
      findings: [{ code: 'qualification-lapsed', mark: 'Pavo Lindmarsh', found: '2026-05-19', limit: '2026-05-18' }],
    })
    expect(result.questions).toEqual([
      {
        cause: fact(9402),
        causeKind: 'qualification corrected',
        stream: stream('person:T2'),
        since: at('05-28 10:00'),
      },
    ])
  })
  it.each([
    ['2026-05-19', 'pass', undefined],
    ['2026-05-18', 'fail', 'qualification-lapsed'],
    ['2026-05-20', 'pass', undefined],
  ] as const)('valid to %s', (validTo, verdict, code) => {
    const result = judge(rule, [mix()], people(someone('T2', [qualification(9401, '03-01 08:00', validTo)])))
    expect([result.verdict, result.findings[0]?.code]).toEqual([verdict, code])
  })
  it('names supervision by a qualified supervisor as such', () => {
    const lead = someone('L1', [
      envelope('qualification-recorded', 9404, 'person:L1', '03-01 08:00', {
        number: 'Q-064',
        task: 'supervisor',
        validTo: '2027-02-28',
      }),
    ])
    expect(judge(rule, [mix('L1')], people(someone('T2', [first, corrected]), lead))).toMatchObject({
      verdict: 'pass',
      found: 'Pavo Lindmarsh supervised by L1 Q-064',
    })
    expect(
      judge(rule, [mix('L1')], people(someone('T2', [first, corrected]), someone('L1', []))).findings[0]?.code,
    ).toBe('qualification-lapsed')
  })
  it('asks for geometry and knows what is missing', () => {
    expect(judge(rule, [mix()], { ...people(someone('T2', [first])), geometry: 'bend' }).findings[0]).toMatchObject({
      code: 'qualification-scope',
      found: 'straight',
      limit: 'bend',
    })
    expect(
      judge(
        rule,
        [mix()],
        people(
          someone('T2', [
            envelope('qualification-recorded', 1, 'person:T2', '03-01 08:00', {
              number: 'Q',
              task: 'applicator',
              validTo: '2027-01-01',
            }),
          ]),
        ),
      ).findings[0]?.code,
    ).toBe('qualification-scope-missing')
    expect(judge(rule, [mix()], people(someone('T2', [renewed]))).findings[0]?.code).toBe('qualification-not-yet')
    expect(judge(rule, [mix()], people(someone('T2', []))).findings[0]?.code).toBe('qualification-missing')
    expect(judge(rule, [mix()]).findings[0]?.code).toBe('person-unknown')
    expect(judge(rule, []).findings[0]?.code).toBe('no-person')
  })
})
