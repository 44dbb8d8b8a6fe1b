import { describe, expect, it } from 'vitest'
import { judgeCriterion } from '@/lib/domain/judge/judge-criterion'
import { measured } from '@/lib/domain/reading'
import { at, contextOf, criterion, limit, recordedAt, stream } from './judge-fixtures'

const MARGIN = criterion({ kind: 'each', quantity: 'dew-margin', min: limit('3.0', 'K') }, '07')
const DEW = criterion({ kind: 'each', quantity: 'dew-point', max: limit('40', 'degC') }, '07')

const climate = (when: string, air: string, humidity: string, steel: [string, string][]) =>
  recordedAt(when, {
    type: 'climate',
    takenAt: at(when),
    air: measured(air, 'degC'),
    humidity: measured(humidity, '%'),
    steel: steel.map(([clock, temp]) => ({ clock, reading: measured(temp, 'degC') })),
    instrument: stream('instrument:TH-11'),
    steelInstrument: stream('instrument:ST-04'),
  })

describe('climate of the demo job', () => {
  it.each([
    ['05-12 09:22', '19.4', '66', '17.8', '12.9', '4.9', 'pass'],
    ['05-12 10:20', '20.1', '64', '18.3', '13.1', '5.2', 'pass'],
    ['05-12 11:36', '20.8', '61', '18.9', '13.0', '5.9', 'pass'],
    ['05-19 09:00', '15.9', '78', '16.4', '12.1', '4.3', 'pass'],
    ['05-19 09:00', '15.9', '78', '15.3', '12.1', '3.2', 'pass'],
    ['05-27 09:18', '17.6', '74', '16.9', '12.9', '4.0', 'pass'],
    ['05-27 11:15', '18.2', '81', '16.8', '14.9', '1.9', 'fail'],
    ['05-27 12:50', '18.0', '86', '16.5', '15.6', '0.9', 'fail'],
    ['05-14 08:40', '18.9', '63', '18.1', '11.7', '6.4', 'pass'],
    ['05-14 10:30', '19.2', '62', '18.4', '11.7', '6.7', 'pass'],
  ] as const)('%s air %s °C, %s %%, steel %s', (when, air, humidity, steel, dew, margin, verdict) => {
    const record = climate(when, air, humidity, [['6', steel]])
    expect(judgeCriterion(MARGIN, contextOf([MARGIN], [record]))).toMatchObject({ verdict, figures: { worst: margin } })
    expect(judgeCriterion(DEW, contextOf([DEW], [record])).figures.worst).toBe(dew)
  })

  it('takes the coldest of several steel readings', () => {
    const result = judgeCriterion(
      MARGIN,
      contextOf(
        [MARGIN],
        [
          climate('05-19 09:00', '15.9', '78', [
            ['3', '16.4'],
            ['6', '15.3'],
          ]),
        ],
      ),
    )
    expect(result).toMatchObject({
      verdict: 'pass',
      found: "lowest 3.2 K at 6 o'clock, 2 readings",
      figures: { worst: '3.2', worstMark: "6 o'clock" },
    })
  })

  it('compares the computed value, not the one that is shown: 2.96 K fails and does not show 3.0', () => {
    const result = judgeCriterion(MARGIN, contextOf([MARGIN], [climate('05-19 09:00', '15.9', '78', [['6', '15.02']])]))
    expect(result.verdict).toBe('fail')
    expect(result.findings[0]).toMatchObject({ code: 'reading-below-limit', limit: '≥ 3.0 K' })
    expect(Number(result.figures.worst)).toBeLessThan(3)
  })

  it('an unusable humidity beside a good record is not proven', () => {
    const bad = climate('05-12 10:20', '20.1', '120', [['6', '18.3']])
    const result = judgeCriterion(
      MARGIN,
      contextOf([MARGIN], [climate('05-12 09:22', '19.4', '66', [['6', '17.8']]), bad]),
    )
    expect(result).toMatchObject({ verdict: 'not proven', findings: [{ code: 'reading-missing', mark: "6 o'clock" }] })
  })
})
