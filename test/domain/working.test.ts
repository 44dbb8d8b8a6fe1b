import { beforeAll, describe, expect, test } from 'vitest'
import { foldInstrument } from '@/lib/domain/fold/fold-instrument'
import type { RepairState } from '@/lib/domain/fold/repair-state'
import { measured } from '@/lib/domain/reading'
import type { RecordOf } from '@/lib/domain/records/record'
import { decisionWords } from '@/lib/domain/working/decision-shown'
import type { Working, WorkingGround } from '@/lib/domain/working/working'
import { workingOf } from '@/lib/domain/working/working-of'
import { attemptOf, criterionOf, FACTS, foldDemo, REPAIRS } from '@/test/demo/folded-demo'

const states = new Map<string, RepairState>()
beforeAll(() => {
  for (const number of REPAIRS) states.set(number, foldDemo(number))
})
function groundOf(number: string, point: string, attempt = 1): WorkingGround {
  const state = states.get(number) ?? foldDemo(number)
  const streams = [...new Set(FACTS.map((fact) => fact.stream))].filter((one) => one.startsWith('instrument:'))
  return {
    state,
    attempt: attemptOf(state, point, attempt),
    instruments: Object.fromEntries(
      streams.flatMap((stream) => {
        const one = foldInstrument(FACTS, stream, state.asOf)
        return one ? [[stream, one]] : []
      }),
    ),
  }
}
const working = (number: string, id: string, attempt = 1): Working => {
  const ground = groundOf(number, id.slice(0, 2), attempt)
  return workingOf(criterionOf(ground.state, id, attempt), ground)
}
const arithmetic = (number: string, id: string, attempt = 1): string =>
  working(number, id, attempt).arithmetic.join(' | ')

describe('arithmetic with the numbers put in, by hand', () => {
  test('dew point and margin of MD-0041 at 09:22: 19.4 °C, 66 %, steel 17.8 °C', () => {
    // ln 0.66 + 17.62 × 19.4 / 262.52 = −0.4155 + 1.3021 = 0.8866; 243.12 × 0.8866 / 16.7334 = 12.88
    expect(arithmetic('MD-0041', '07.margin')).toContain(
      '09:22: x = ln(66/100) + 17.62 × 19.4 / (243.12 + 19.4) = 0.8866; Td = 243.12 × 0.8866 / (17.62 − 0.8866) = 12.88 °C',
    )
    expect(arithmetic('MD-0041', '07.margin')).toContain('margin at 6 o’clock: 17.8 − 12.88 = 4.92 K')
  })
  test('mean of MD-0042 T1 and T3', () => {
    expect(arithmetic('MD-0042', '16.mean', 1)).toContain('1430 / 20 = 71.50')
    expect(arithmetic('MD-0042', '16.mean', 3)).toContain('1568 / 20 = 78.40')
  })
  test('the worst reading against its limit', () => {
    expect(arithmetic('MD-0042', '16.each', 2)).toContain('lowest 69 at C-6: 69 − 74 = -5 Shore D, outside')
    expect(arithmetic('MD-0041', '17.thickness')).toContain('lowest 6.9 at E-9: 6.9 − 6.8 = 0.1 mm, inside')
  })
  test('filler, plug, band, tape and plies', () => {
    expect(arithmetic('MD-0041', '11.over-hole')).toContain('0@6: 2.5 − (-5.1) = 7.6 mm')
    expect(arithmetic('MD-0044', '08.plug-amount')).toContain('π/4 × 3 × 2 × 6 × 2.5 = 70.7 mm³')
    expect(arithmetic('MD-0044', '08.band')).toContain('359.1 + 2π (0.5 + 0.7 / 2) + 60 = 424.4 mm')
    expect(arithmetic('MD-0044', '08.hard')).toContain('26 × (17/26)^0.0292 = 25.68 min')
    expect(arithmetic('MD-0044', '14.working-time')).toContain('4 × (2.75/4)^0.8290 = 2.93 min')
    expect(arithmetic('MD-0044', '14.start')).toContain('0.5 × 300 = 150 mm')
    expect(arithmetic('MD-0044', '14.plies')).toContain('4 × 2 = 8 plies')
    expect(arithmetic('MD-0044', '14.overlap')).toContain('(1 − 32 / 75) × 100 = 57.3 %')
  })
  test('pressure drop without and with a change of the steel', () => {
    expect(arithmetic('MD-0042', '18.drop')).toContain('1.214 − 1.210 = 0.004 MPa, allowed 0.020 MPa')
    const ground = groundOf('MD-0042', '18')
    const warmer = {
      ...ground,
      attempt: {
        ...ground.attempt,
        records: ground.attempt.records.map((one) => {
          if (one.record.type !== 'pressure-test') return one
          const record: RecordOf<'pressure-test'> = {
            ...one.record,
            readings: one.record.readings.map((each, at) =>
              at === 3 ? { ...each, steel: measured('13.2', 'degC') } : each,
            ),
          }
          return { ...one, record }
        }),
      },
    }
    // 1.34e-4 / (1/2180 + 0.95 × 219.1 / (207000 × 8.2)) = 0.2305 MPa/K; 0.1 K: 1.214 + 0.0231 − 1.210 = 0.0271
    const lines = workingOf(criterionOf(ground.state, '18.drop'), warmer).arithmetic.join(' | ')
    expect(lines).toContain('0.2305 MPa/K')
    expect(lines).toContain('drop = 1.2371 − 1.210 = 0.0271 MPa')
  })
  test('a bound of the envelope is shown with the sign that holds', () => {
    const ground = groundOf('MD-0041', '01')
    const result = criterionOf(ground.state, '01.envelope')
    expect(workingOf(result, ground).arithmetic.join()).toMatch(/hole axial: 4 mm ≤/)
    const { defect } = ground.state
    if (!defect) throw new Error('no defect')
    const grown = { ...ground, state: { ...ground.state, defect: { ...defect, holeAxial: measured('90', 'mm') } } }
    expect(workingOf(result, grown).arithmetic.join()).toMatch(/hole axial: 90 mm >/)
  })
})

describe('inputs', () => {
  test('every input of a record names a fact that is in the repair’s record', () => {
    for (const state of states.values()) {
      const known = new Set<string>(FACTS.map((fact) => fact.id))
      for (const point of state.points)
        for (const attempt of point.attempts)
          for (const result of attempt.criteria) {
            const shown = workingOf(result, { state, attempt, instruments: {} })
            expect(shown.formula.length).toBeGreaterThan(3)
            expect(shown.source.length).toBeGreaterThan(3)
            for (const one of shown.inputs) if (one.fact !== null) expect(known.has(one.fact)).toBe(true)
          }
    }
  })
  test('a criterion that was judged has inputs', () => {
    for (const state of states.values()) {
      const without = state.points.flatMap((point) =>
        point.attempts.flatMap((attempt) =>
          attempt.criteria
            .filter((one) => attempt.records.length > 0 && one.verdict === 'pass')
            .filter((one) => workingOf(one, { state, attempt, instruments: {} }).inputs.length === 0)
            .map((one) => `${state.number} ${one.criterion.id}/${attempt.attempt}`),
        ),
      )
      expect(without).toEqual([])
    }
  })
  test('the window of preparation to wrap names both its events, of points 05 and 14', () => {
    const { inputs } = working('MD-0041', '14.prep-window')
    expect(inputs.map((one) => one.value)).toEqual(['2026-05-12 08:58 +01:00', '2026-05-12 11:39 +01:00'])
    expect(new Set(inputs.map((one) => one.fact)).size).toBe(2)
  })
})

describe('decision rule', () => {
  test('simple acceptance: said, with the probability of conformance where the certificate states U', () => {
    // 76 against ≥ 74, U = 1.0, u = 0.5: Φ(4) = 99.997 %
    const shown = working('MD-0041', '16.each').decision
    expect(shown[0]).toMatch(/^Simple acceptance/)
    expect(shown.join(' ')).toContain('u = U/2 = 0.5 Shore D gives 99.9 %')
  })
  test('a figure from several readings has no probability by the uncertainty of one gauge', () => {
    expect(working('MD-0041', '11.over-hole').decision.join(' ')).toContain('comes from more than one reading')
  })
  test('a reading on the limit conforms with one half', () => {
    const ground = groundOf('MD-0042', '17')
    const { decision } = workingOf(criterionOf(ground.state, '17.thickness'), {
      ...ground,
      attempt: {
        ...ground.attempt,
        criteria: [],
        records: ground.attempt.records.map((one) =>
          one.record.type === 'thickness'
            ? { ...one, record: { ...one.record, readings: [{ mark: 'A-12', reading: measured('5.5', 'mm') }] } }
            : one,
        ),
      },
    })
    expect(decision.join(' ')).toContain('gives 50.0 %')
  })
  test('guard band: its width beside the limit, and from where a reading passes', () => {
    const ground = groundOf('MD-0041', '16')
    const revisions = ground.state.specificationRevisions.map((one) => ({
      ...one,
      body: { ...one.body, body: { ...one.body.body, decisionRule: 'guard band' as const } },
    }))
    const guarded = { ...ground, state: { ...ground.state, specificationRevisions: revisions } }
    const result = criterionOf(ground.state, '16.each')
    expect(decisionWords(result, guarded)).toBe('guard band 1 Shore D')
    expect(workingOf(result, guarded).decision.join(' ')).toContain('passes from 75 Shore D')
    expect(decisionWords(result, { ...guarded, instruments: {} })).toBe('guard band, uncertainty not known')
    expect(decisionWords(criterionOf(ground.state, '16.count'), guarded)).toBeNull()
  })
})
