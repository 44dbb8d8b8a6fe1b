import { describe, expect, test } from 'vitest'
import { decimal } from '@/lib/domain/decimal'
import type { AttemptState } from '@/lib/domain/fold/repair-state'
import { curePicture } from '@/lib/domain/pictures/cure-picture'
import { curePlotsOf } from '@/lib/domain/pictures/cure-plot'
import type { Picture, Shape } from '@/lib/domain/pictures/picture'
import { plotFrame, thinned, timeTicks } from '@/lib/domain/pictures/plot-frame'
import { pressurePicture } from '@/lib/domain/pictures/pressure-picture'
import { pressurePlotsOf } from '@/lib/domain/pictures/pressure-plot'
import { measured } from '@/lib/domain/reading'
import type { RecordOf } from '@/lib/domain/records/record'
import type { Rule } from '@/lib/domain/specification'
import { attemptOf, foldDemo } from '@/test/demo/folded-demo'

const texts = (picture: Picture): string[] =>
  picture.shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : []))
const styled = (picture: Picture, style: string): Shape[] =>
  picture.shapes.filter((shape) => 'style' in shape && shape.style === style)

/** The cure attempt of MD-0041 with its record or its rule changed. */
function cureWith(change: Partial<RecordOf<'cure'>>, rule?: Rule): AttemptState {
  const attempt = attemptOf(foldDemo('MD-0041'), '15')
  return {
    ...attempt,
    records: attempt.records.map((one) =>
      one.record.type === 'cure' ? { ...one, record: { ...one.record, ...change } } : one,
    ),
    criteria: rule
      ? attempt.criteria.map((one) =>
          one.criterion.rule.kind === 'cure-hold' ? { ...one, criterion: { ...one.criterion, rule } } : one,
        )
      : attempt.criteria,
  }
}
const series = (...points: readonly [string, string][]) =>
  points.map(([clock, text]) => ({ at: `2026-05-12T${clock}:00+01:00`, reading: measured(text, 'degC') }))

describe('cure over time', () => {
  test('MD-0041: 18 h from the start at 12:30 are met at 06:30, and the coldest probe is the thick line with its points', () => {
    const [plot] = curePlotsOf(attemptOf(foldDemo('MD-0041'), '15'))
    expect(plot?.metAtMs).toBe(Date.parse('2026-05-13T06:30:00+01:00'))
    expect(plot?.probes.map((one) => [one.clock, one.isColdest, one.lowest?.shown])).toEqual([
      ['6', true, '16.8 °C'],
      ['12', false, '18.3 °C'],
    ])
    const picture = plot ? curePicture(plot) : null
    expect(picture && styled(picture, 'series-coldest')).toHaveLength(2)
    expect(picture && styled(picture, 'dot')).toHaveLength(20)
    expect(picture && texts(picture)).toContain('rule met 05-13 06:30')
    expect(picture && texts(picture)).toContain('6 o’clock, coldest: lowest 16.8 °C')
  })
  test('MD-0042: not met at the coldest probe, and the post-cure is a plot of its own that no rule judges', () => {
    const plots = curePlotsOf(attemptOf(foldDemo('MD-0042'), '15', 2))
    expect(plots.map((one) => [one.title, one.rule === null, one.metAtMs])).toEqual([
      ['Cure', false, null],
      ['Post-cure, beside the cure that the rule judges', true, null],
    ])
    expect(plots[0]?.sentence).toContain('not reached at every probe; 6 o’clock longest unbroken 0 h')
    const [first] = plots
    expect(first && texts(curePicture(first)).some((one) => one.startsWith('rule met'))).toBe(false)
  })
  test('a dip below the temperature is an interruption between its two crossings', () => {
    const [plot] = curePlotsOf(
      cureWith({
        probes: [{ place: 'p', clock: '6', series: series(['10:00', '17.0'], ['11:00', '15.0'], ['12:00', '17.0']) }],
      }),
    )
    expect(plot?.breaks).toEqual([
      {
        fromMs: Date.parse('2026-05-12T10:30:00+01:00'),
        toMs: Date.parse('2026-05-12T11:30:00+01:00'),
        why: 'below 16 °C at 6 o’clock',
      },
    ])
    expect(plot?.metAtMs).toBeNull()
    expect(plot && styled(curePicture(plot), 'break-area')).toHaveLength(2)
  })
  test('the ambient is a line of its own and never a probe', () => {
    const [plot] = curePlotsOf(cureWith({ ambient: series(['13:00', '9.0'], ['14:00', '9.5']), interrupted: 'yes' }))
    expect(plot?.probes).toHaveLength(2)
    expect(plot?.metAtMs).not.toBeNull()
    expect(plot && styled(curePicture(plot), 'series-ambient')).toHaveLength(2)
    expect(plot?.sentence).toContain('Recorded as interrupted.')
  })
  test('equivalent cure: at a row of 600 min, half is reached after 300 min and all after 600, at the coldest probe', () => {
    const table = {
      kind: 'interpolated' as const,
      rows: [
        { temp: decimal('10'), minutes: decimal('600') },
        { temp: decimal('20'), minutes: decimal('300') },
      ],
    }
    const [plot] = curePlotsOf(
      cureWith(
        {
          probes: [
            { place: 'cold', clock: '6', series: series(['06:00', '10'], ['11:00', '10'], ['18:00', '10']) },
            { place: 'warm', clock: '12', series: series(['06:00', '20'], ['11:00', '20'], ['18:00', '20']) },
          ],
        },
        { kind: 'cure-equivalent', table },
      ),
    )
    const cold = plot?.probes.find((one) => one.isColdest)
    expect(cold?.clock).toBe('6')
    expect(cold?.curve?.points.map((one) => Number(one.share.toFixed(6)))).toEqual([0, 0.5, 1.2])
    expect(cold?.curve?.doneAtMs).toBeCloseTo(Date.parse('2026-05-12T16:00:00+01:00'), -1)
    expect(plot?.metAtMs).toBe(cold?.curve?.doneAtMs)
    expect(plot && styled(curePicture(plot), 'series-second').length).toBeGreaterThan(0)
  })
})

describe('pressure over the test', () => {
  const state = foldDemo('MD-0042')
  const tested = attemptOf(state, '18')
  test('MD-0042: steel unchanged, the corrected reading is the reading, the allowed line 0.020 MPa below the start', () => {
    const [plot] = pressurePlotsOf(state, tested)
    expect(plot?.points.map((one) => one.mpa)).toEqual([1.214, 1.211, 1.21, 1.21])
    expect(plot?.points.map((one) => one.correctedMpa)).toEqual([1.214, null, null, 1.21])
    expect(plot?.allowed?.mpa).toBeCloseTo(1.194, 12)
    expect(plot?.least?.text).toBe('1.21 MPa')
    expect(plot && texts(pressurePicture(plot))).toEqual(expect.arrayContaining(['1.214', '1.211', '1.210']))
  })
  test('steel 1 K warmer: 0.2305 MPa are taken off, by hand from the specification’s figures', () => {
    const warmer = {
      ...tested,
      records: tested.records.map((one) =>
        one.record.type === 'pressure-test'
          ? {
              ...one,
              record: {
                ...one.record,
                readings: one.record.readings.map((each, at) =>
                  at === 3
                    ? { ...each, steel: measured('14.1', 'degC'), secondPressure: measured('12.1', 'bar') }
                    : each,
                ),
              },
            }
          : one,
      ),
    }
    // a = 3 × 1.2e-5 = 3.6e-5; c = 1.25 − 0.3 = 0.95; (1.7e-4 − 3.6e-5) / (1/2180 + 0.95 × 219.1 / (207000 × 8.2))
    const perK = (1.7e-4 - 3.6e-5) / (1 / 2180 + (0.95 * 219.1) / (207_000 * 8.2))
    expect(perK).toBeCloseTo(0.2305, 4)
    const [plot] = pressurePlotsOf(state, warmer)
    expect(plot?.points[3]?.correctedMpa).toBeCloseTo(1.21 - perK, 9)
    expect(plot?.points[3]?.second).toEqual({ mpa: 1.21, shown: '12.1 bar' })
    expect(plot?.sentence).toContain('Corrected for steel temperature')
  })
})

test('clock times stand on round steps in the site’s offset, the day under the first of each', () => {
  const span = [Date.parse('2026-05-12T12:30:00+01:00'), Date.parse('2026-05-13T07:10:00+01:00')] as const
  expect(timeTicks(span, '+01:00', 8).map((one) => [one.clock, one.day])).toEqual([
    ['15:00', '05-12'],
    ['18:00', null],
    ['21:00', null],
    ['00:00', '05-13'],
    ['03:00', null],
    ['06:00', null],
  ])
})

test('thinning a long log keeps its lowest and highest point and both ends', () => {
  const points = Array.from({ length: 5000 }, (_, at) => ({ atMs: at, value: at === 3333 ? -9 : at === 1234 ? 99 : 1 }))
  const kept = thinned(points, (one) => one.value)
  expect(kept.length).toBeLessThan(1200)
  expect(kept.map((one) => one.value)).toEqual(expect.arrayContaining([-9, 99]))
  expect([kept[0]?.atMs, kept.at(-1)?.atMs]).toEqual([0, 4999])
})

test('every plot fits its frame, wide and narrow', () => {
  for (const number of ['MD-0041', 'MD-0042', 'MD-0044'])
    for (const format of ['wide', 'narrow'] as const) {
      const state = foldDemo(number)
      const attempts = state.points.flatMap((point) => point.attempts)
      const pictures = [
        ...attempts.flatMap((one) => curePlotsOf(one).map((plot) => curePicture(plot, format))),
        ...attempts.flatMap((one) => pressurePlotsOf(state, one).map((plot) => pressurePicture(plot, format))),
      ]
      expect(pictures.length).toBeGreaterThan(1)
      for (const picture of pictures)
        for (const shape of picture.shapes)
          if (shape.kind === 'polyline' || shape.kind === 'polygon')
            for (const [x, y] of shape.points)
              expect([x >= 0 && x <= picture.widthPx, y >= 0 && y <= picture.heightPx]).toEqual([true, true])
    }
  expect(plotFrame('narrow', [0, 1], [0, 1], { legendRows: 0 }).widthPx).toBe(380)
})
